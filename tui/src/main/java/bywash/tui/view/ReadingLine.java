package bywash.tui.view;

import bywash.rules.engine.ProbeStatus;
import bywash.rules.engine.ProbeStatus.Health;
import bywash.rules.site.Band;
import bywash.rules.site.Quantity;
import java.time.Duration;
import java.time.Instant;
import java.util.List;

/**
 * One probe's reading.
 *
 * @param word its quality, in a word
 * @param age since the reading
 * @param trend means of equal slices of the last half hour, oldest first; NaN where there is none
 * @param trendSpan the least height of the trend, so that noise stays flat
 */
public record ReadingLine(
        String name,
        String value,
        String band,
        String word,
        String age,
        Tone tone,
        List<Double> trend,
        double trendSpan) {
    /** The word of a reading that the probes' book doubts. */
    static final String SUSPECT = "suspect";

    /** The word of a reading that was good when the feed was lost. */
    static final String STALE = "not fresh";

    private static final Duration SPAN = Duration.ofMinutes(30);

    static ReadingLine from(ProbeStatus status, Frame frame, int columns) {
        Instant now = frame.at();
        Instant at = status.at();
        Quantity quantity = status.probe().quantity();
        DisplayUnits units = new DisplayUnits(frame.snapshot().site().units());
        Band band = status.band();
        String known = word(status);
        String word = known.equals("good") && !frame.snapshot().feedUp() ? STALE : known;
        boolean bad = !List.of("good", "waiting", STALE, "").contains(word);
        return new ReadingLine(
                fullName(status),
                units.value(quantity, status.value()),
                band == null ? "" : units.band(quantity, band),
                word,
                at == null ? "--" : Words.shortSpan(at, now),
                bad ? Tone.WARNING : Tone.PLAIN,
                frame.trends().columns(status.probe().id(), now, SPAN, columns),
                leastSpan(quantity));
    }

    private static String word(ProbeStatus status) {
        return switch (status.health()) {
            case WAITING -> "waiting";
            case SILENT -> "SILENT";
            case STUCK -> "STUCK";
            case IMPLAUSIBLE -> "NOT CREDIBLE";
            case GOOD -> suspect(limits(status), status);
        };
    }

    /** What the probes' book doubts is not called good; out of its band it is still that. */
    private static String suspect(String word, ProbeStatus status) {
        return word.equals("good") && !status.suspect().isEmpty() ? SUSPECT : word;
    }

    private static String limits(ProbeStatus status) {
        Band band = status.band();
        if (band == null) {
            return status.health() == Health.GOOD && status.probe().quantity() != Quantity.STATE ? "good" : "";
        }
        return status.value() < band.low() ? "LOW" : status.value() > band.high() ? "HIGH" : "good";
    }

    /** Vessel and quantity in the grower's words. */
    public static String fullName(ProbeStatus status) {
        return status.probe().vessel() + " " + name(status);
    }

    private static String name(ProbeStatus status) {
        var device = status.probe().device();
        return switch (status.probe().quantity()) {
            case DISSOLVED_OXYGEN -> "oxygen";
            case PH -> "pH";
            case ORP -> "ORP";
            case STATE -> device == null ? "state" : device.word();
            default -> status.probe().quantity().word();
        };
    }

    /** The least height of a trend, so that noise stays flat; unit as the quantity's. */
    public static double leastSpan(Quantity quantity) {
        return switch (quantity) {
            case PH -> 0.2;
            case TEMPERATURE, DISSOLVED_OXYGEN -> 1;
            case ORP -> 40;
            case LEVEL -> 20;
            case CONDUCTIVITY -> 50;
            case FLOW, STATE -> 1;
        };
    }
}
