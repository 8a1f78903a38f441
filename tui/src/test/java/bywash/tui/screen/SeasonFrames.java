package bywash.tui.screen;

import bywash.rules.engine.ProbeStatus;
import bywash.rules.engine.Snapshot;
import bywash.rules.event.Appetite;
import bywash.rules.event.CalibrationPoint;
import bywash.rules.event.OperatorEntry.Calibrate;
import bywash.rules.event.OperatorEntry.Feed;
import bywash.rules.event.OperatorEntry.FishIn;
import bywash.rules.event.OperatorEntry.FishLoss;
import bywash.rules.event.OperatorEntry.Harvest;
import bywash.rules.event.OperatorEntry.Plant;
import bywash.rules.event.OperatorEntry.ProbeCare;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.event.OperatorEntry.Weigh;
import bywash.rules.husbandry.season.SeasonLedger;
import bywash.rules.husbandry.season.SeasonStatus;
import bywash.rules.husbandry.season.Surroundings;
import bywash.rules.site.Stocking;
import bywash.tui.view.Frame;
import java.time.Instant;
import java.util.List;

/** Frames with a season on record, booked by the rules themselves. */
final class SeasonFrames {
    private SeasonFrames() {}

    private static Instant day(double before) {
        return Frames.NOW.minusSeconds(Math.round(before * 86_400));
    }

    /** Two months of fish; the pH probe is overdue, the oxygen has little to spare, one entry could not be booked. */
    static Frame stocked() {
        return stocked(Frames.quiet());
    }

    /** The same at a site that reads US units. */
    static Frame stockedUs() {
        return stocked(Frames.quietUs());
    }

    /** A stocked site as another frame has it. */
    static Frame stocked(Frame base) {
        SeasonLedger book = new SeasonLedger(base.snapshot().site());
        readings(book, 6.31);
        book.book(new Plant(day(60), "bed-1", "lettuce", 1.2));
        book.book(new FishIn(day(60), "spring", "nile-tilapia", 80, 120, "fish-tank"));
        for (int d = 59; d > 0; d--) {
            book.book(new Feed(day(d), 150, 0.32, null, d == 1 ? Appetite.POOR : null));
        }
        book.book(new FishLoss(day(40), "spring", 2, "jumped"));
        book.book(new Weigh(day(20), "spring", false, 5, 880, List.of(150.0, 168.0, 176.0, 184.0, 202.0)));
        book.book(new Harvest(day(6), "spring", 4, List.of(214.0, 225.0, 231.0, 250.0)));
        book.book(new Harvest(day(5), "autumn", 1, List.of(200.0)));
        tests(book);
        return with(base, book, Stocking.FISH);
    }

    /** No fish: the bacteria are fed, the way back has gaps. */
    static Frame fishless() {
        SeasonLedger book = new SeasonLedger(Frames.quiet().snapshot().site());
        readings(book, 6.9);
        tests(book);
        return with(Frames.quiet(), book, Stocking.FISHLESS);
    }

    private static void tests(SeasonLedger book) {
        for (int d : new int[] {15, 8, 1}) {
            book.book(new WaterTest(day(d), "fish-tank", "nitrate", 60 + 2 * (15 - d)));
        }
        book.book(new WaterTest(day(0.9), "fish-tank", "alkalinity", 35));
        book.book(new WaterTest(day(0.9), "fish-tank", "total-ammonia", 0.4));
        book.book(new WaterTest(day(0.9), "fish-tank", "nitrite", 0.7));
    }

    private static void readings(SeasonLedger book, double ph) {
        book.book(calibration(70, 57.4, 2));
        book.book(calibration(40, 56.8, -4));
        book.book(new ProbeCare(day(40), "fish-ph", "cleaned"));
        for (int hour = 60 * 24; hour >= 0; hour -= 6) {
            Instant at = day(hour / 24.0);
            book.reading("fish-ph", at, ph);
            book.reading("fish-temp", at, 25.2);
            book.reading("fish-do", at, 5.6);
        }
        book.book(new WaterTest(day(0).plusSeconds(90), "fish-tank", "ph", ph - 0.1));
    }

    private static Calibrate calibration(double before, double slopeMv, double offsetMv) {
        return new Calibrate(
                day(before),
                "fish-ph",
                "",
                List.of(
                        new CalibrationPoint(4.005, "pH", offsetMv + slopeMv * 2.995, "mV"),
                        new CalibrationPoint(6.865, "pH", offsetMv + slopeMv * 0.135, "mV")),
                25);
    }

    private static Frame with(Frame frame, SeasonLedger book, Stocking stocking) {
        Snapshot s = frame.snapshot();
        SeasonStatus season = book.status(
                Frames.NOW, new Surroundings(stocking, s.systemVolume().likelyL(), 0.4));
        List<ProbeStatus> probes = s.probes().stream()
                .map(p -> new ProbeStatus(
                        p.probe(),
                        p.value(),
                        p.at(),
                        p.health(),
                        p.band(),
                        p.perHour(),
                        book.suspect(p.probe().id(), Frames.NOW)))
                .toList();
        SnapshotDraft seasoned = new SnapshotDraft(s);
        seasoned.stocking = stocking;
        seasoned.probes = probes;
        seasoned.season = season;
        return new Frame(
                seasoned.done(), frame.trends(), frame.log(), frame.now(), frame.losses(), frame.safeSources(), "");
    }
}
