package bywash.tui.view;

import bywash.rules.engine.ProbeStatus;
import bywash.rules.engine.Snapshot;
import bywash.rules.engine.VesselStatus;
import bywash.rules.site.Quantity;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Everything at a glance.
 *
 * @param first the first thing wrong; null when no alarm stands
 * @param headline what is said then
 * @param readings the abnormal before the good
 * @param unprobed vessels without a level probe, in words; empty when there are none
 * @param incidents how many incidents the alarms belong to
 * @param topUp the running or last top-up in words; empty when there was none
 */
public record OverviewView(
        HeadView head,
        @Nullable AlarmDetail first,
        Headline headline,
        List<ReadingLine> readings,
        List<VesselLine> vessels,
        String unprobed,
        String topUp,
        ChlorineView chlorine,
        List<AlarmLine> alarms,
        int incidents,
        List<LogLine> log) {
    private static final int LOG_LINES = 30;

    /**
     * Made from a frame.
     *
     * @param trendColumns how many columns the trend has room for
     * @param normal what the screen knows of normal levels
     */
    public static OverviewView from(Frame frame, int trendColumns, NormalLevels normal) {
        Snapshot s = frame.snapshot();
        DisplayUnits units = new DisplayUnits(s.site().units());
        List<ReadingLine> readings = s.probes().stream()
                .filter(p -> p.probe().quantity() != Quantity.LEVEL || p.health() != ProbeStatus.Health.GOOD)
                .map(p -> ReadingLine.from(p, frame, trendColumns))
                .sorted((a, b) -> b.tone().compareTo(a.tone()))
                .toList();
        String unprobed = s.vessels().stream()
                .filter(v -> !probed(s, v))
                .map(v -> v.vessel().id() + " " + units.volume(v.vessel().volumeL()))
                .collect(Collectors.joining(", "));
        return new OverviewView(
                HeadView.from(frame),
                AlarmDetail.first(frame),
                Headline.from(frame),
                readings,
                s.vessels().stream()
                        .filter(v -> probed(s, v))
                        .map(v -> VesselLine.from(v, frame, normal.of(v.vessel(), frame)))
                        .toList(),
                unprobed,
                TopUpProgress.words(frame),
                ChlorineView.from(frame),
                Stories.lines(frame),
                Stories.count(frame),
                LogLine.newest(frame, LOG_LINES));
    }

    private static boolean probed(Snapshot s, VesselStatus vessel) {
        return s.site().probe(vessel.vessel().id(), Quantity.LEVEL).isPresent();
    }
}
