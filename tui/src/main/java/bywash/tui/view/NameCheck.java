package bywash.tui.view;

import bywash.ingest.site.KnownWords;
import bywash.rules.alarm.AlarmKind;
import bywash.rules.alarm.AlarmView;
import bywash.rules.event.OperatorEntry;
import bywash.rules.event.OperatorEntry.Acknowledge;
import bywash.rules.event.OperatorEntry.BatchFill;
import bywash.rules.event.OperatorEntry.BatchTreat;
import bywash.rules.event.OperatorEntry.BedState;
import bywash.rules.event.OperatorEntry.Calibrate;
import bywash.rules.event.OperatorEntry.CropHarvest;
import bywash.rules.event.OperatorEntry.Dose;
import bywash.rules.event.OperatorEntry.FishIn;
import bywash.rules.event.OperatorEntry.FishMove;
import bywash.rules.event.OperatorEntry.MaintenanceEnd;
import bywash.rules.event.OperatorEntry.MaintenanceStart;
import bywash.rules.event.OperatorEntry.OutOfService;
import bywash.rules.event.OperatorEntry.Plant;
import bywash.rules.event.OperatorEntry.ProbeCare;
import bywash.rules.event.OperatorEntry.ReturnToService;
import bywash.rules.event.OperatorEntry.Shelve;
import bywash.rules.event.OperatorEntry.TopUpEnd;
import bywash.rules.event.OperatorEntry.TopUpStart;
import bywash.rules.event.OperatorEntry.Unshelve;
import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.site.Site;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Whether a site has what an entry names: its vessel, its source, its probe, its alarm and what that is about. */
public final class NameCheck {
    private static final String MAINS = "mains";

    private final Site site;
    private final List<AlarmView> standing;

    private NameCheck(Site site, List<AlarmView> standing) {
        this.site = site;
        this.standing = standing;
    }

    /**
     * What is wrong and what would be right, the likeliest first, without a full stop; empty where nothing is.
     *
     * @param standing alarms that stand, which may be of something that the site had before
     */
    public static String problem(Site site, List<AlarmView> standing, OperatorEntry entry) {
        return new NameCheck(site, standing).problem(entry);
    }

    private String problem(OperatorEntry entry) {
        return switch (entry.kind()) {
            case TOP_UP_START -> topUp((TopUpStart) entry);
            case TOP_UP_END -> vessel(((TopUpEnd) entry).vessel());
            case BATCH_FILL -> vessel(((BatchFill) entry).vessel());
            case BATCH_TREAT -> vessel(((BatchTreat) entry).vessel());
            case TEST -> vessel(((WaterTest) entry).vessel());
            case FISH_IN -> vessel(((FishIn) entry).vessel());
            case FISH_MOVE ->
                ((FishMove) entry).vessel().equals(FishMove.AWAY) ? "" : vessel(((FishMove) entry).vessel());
            case PLANT -> vessel(((Plant) entry).vessel());
            case CROP_HARVEST -> vessel(((CropHarvest) entry).vessel());
            case BED -> vessel(((BedState) entry).vessel());
            case DOSE -> vessel(((Dose) entry).vessel());
            case CALIBRATE -> probe(((Calibrate) entry).probe());
            case PROBE_CARE -> probe(((ProbeCare) entry).probe());
            case ACKNOWLEDGE -> alarm(((Acknowledge) entry).alarm(), ((Acknowledge) entry).subject());
            case SHELVE -> alarm(((Shelve) entry).alarm(), ((Shelve) entry).subject());
            case UNSHELVE -> alarm(((Unshelve) entry).alarm(), ((Unshelve) entry).subject());
            case OUT_OF_SERVICE -> alarm(((OutOfService) entry).alarm(), ((OutOfService) entry).subject());
            case RETURN_TO_SERVICE -> alarm(((ReturnToService) entry).alarm(), ((ReturnToService) entry).subject());
            case MAINTENANCE_START -> care(((MaintenanceStart) entry).subject());
            case MAINTENANCE_END -> care(((MaintenanceEnd) entry).subject());
            case STOCKING, FEED, HARVEST, WEIGH, FISH_LOSS, PH_PLAN -> ""; // cohorts and species: the season's books
            case NOTE, STEP_DONE, WITHDRAW -> "";
        };
    }

    private String topUp(TopUpStart entry) {
        String vessel = vessel(entry.vessel());
        List<String> sources = Stream.concat(
                        site.vessels(VesselRole.RESERVE).stream().map(Vessel::id), Stream.of(MAINS))
                .toList();
        return vessel.isEmpty()
                ? known("source", entry.source(), sources, " is no reserve of the site file, nor the mains; it has ")
                : vessel;
    }

    private String vessel(@Nullable String id) {
        return known("vessel", id, AlarmSubjects.vessels(site), " is not in the site file; it has ");
    }

    private String probe(String id) {
        return known("probe", id, AlarmSubjects.probes(site), " is not in the site file; it has ");
    }

    /** A probe, or the vessel of a pump. */
    private String care(String id) {
        List<String> all = Stream.concat(AlarmSubjects.probes(site).stream(), AlarmSubjects.vessels(site).stream())
                .toList();
        return known("subject", id, all, " is no probe or vessel of the site file; it has ");
    }

    private String alarm(@Nullable String word, @Nullable String subject) {
        List<String> words =
                Arrays.stream(AlarmKind.values()).map(AlarmKind::word).toList();
        String wrong = known("alarm", word, words, " is not known; there are ");
        if (!wrong.isEmpty()) {
            return wrong;
        }
        Set<String> right = new LinkedHashSet<>();
        for (AlarmKind kind : AlarmKind.values()) {
            if (word == null || kind.word().equals(word)) {
                right.addAll(AlarmSubjects.of(site, kind));
                standing.stream()
                        .filter(a -> a.kind() == kind)
                        .map(AlarmView::subject)
                        .forEach(right::add);
            }
        }
        String what = word == null ? " is nothing that an alarm is about" : " is nothing that " + word + " is about";
        return right.isEmpty() && subject != null
                ? "subject \"" + subject + "\"" + what + "; the site has no probe for it"
                : known("subject", subject, List.copyOf(right), what + "; here it is ");
    }

    private static String known(String what, @Nullable String name, List<String> all, String wrong) {
        return name == null || all.contains(name)
                ? ""
                : what + " \"" + name + "\"" + wrong + String.join(", ", KnownWords.nearestFirst(name, all));
    }
}
