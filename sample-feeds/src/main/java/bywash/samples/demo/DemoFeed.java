package bywash.samples.demo;

import bywash.ingest.recording.RecordedLine;
import bywash.rules.event.OperatorEntry;
import bywash.samples.MakeRecordings;
import bywash.samples.season.SeasonSimulation;
import bywash.samples.simulation.Action;
import bywash.samples.simulation.SimulatedSite;
import bywash.samples.simulation.SiteModel;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** The demo: a few quiet hours from which the cycles are learned, then a top-up, then a valve left open. */
public final class DemoFeed {
    /** First moment of the history. */
    public static final Instant START = Instant.parse("2026-05-04T06:00:00Z");

    /** Where the story begins, on the screen. */
    public static final Instant STORY = START.plus(Duration.ofHours(5));

    /** Classpath resource of the site file. */
    public static final String SITE = "/bywash/samples/sites/larkfield.yaml";

    private static final long SEED = 41;

    private DemoFeed() {}

    /**
     * What the grower entered of the season before the demo begins, oldest first: fish, feed, beds, doses, tests of the loop, care of
     * probes. What concerns the reserve is left out; the demo has its own.
     */
    public static List<OperatorEntry> season() {
        return new SeasonSimulation(MakeRecordings.SEASON_SEED)
                .lines().stream()
                        .filter(RecordedLine.Entry.class::isInstance)
                        .map(line -> ((RecordedLine.Entry) line).entry())
                        .filter(entry -> entry.at().isBefore(START) && !ofTheReserve(entry))
                        .toList();
    }

    private static boolean ofTheReserve(OperatorEntry entry) {
        return switch (entry.kind()) {
            case TOP_UP_START, TOP_UP_END, BATCH_FILL, BATCH_TREAT -> true;
            case TEST -> ((OperatorEntry.WaterTest) entry).vessel().equals("reserve");
            case STOCKING, FEED, FISH_IN, HARVEST, WEIGH, FISH_LOSS, FISH_MOVE, PLANT, CROP_HARVEST, BED -> false;
            case DOSE, PH_PLAN, CALIBRATE, PROBE_CARE, NOTE, STEP_DONE, WITHDRAW, ACKNOWLEDGE -> false;
            case SHELVE, UNSHELVE, MAINTENANCE_START, MAINTENANCE_END, OUT_OF_SERVICE, RETURN_TO_SERVICE -> false;
        };
    }

    /** Every line in order; lines before {@link #STORY} are the history. */
    public static List<RecordedLine> lines() {
        double story = Duration.between(START, STORY).toMinutes();
        List<Action> actions = List.of(
                new Action.TestReserve(story - 60, 0.0),
                new Action.TopUp(story + 8, 12, 6, 0, 0),
                new Action.InflowIntoSump(story + 36, story + 90, 7, 0.9));
        SimulatedSite site =
                new SimulatedSite(SiteModel.larkfield(), actions, START, Duration.ofMinutes((long) story + 95), SEED);
        List<RecordedLine> lines = new ArrayList<>();
        for (RecordedLine line = site.next(); line != null; line = site.next()) {
            lines.add(line);
        }
        return lines;
    }
}
