package bywash.tui.view;

import bywash.rules.chlorine.ResidualEstimate;
import java.time.Instant;
import java.util.List;

/**
 * The chlorine estimate against the US EPA 1985 criteria for fresh water: acute 19 ug/L (1 h mean), chronic 11 ug/L
 * (4 d mean).
 */
public record ChlorineView(
        String range, String criteria, String chance, String verdict, List<String> evidence, Tone tone) {
    private static final double ACUTE_UG_L = 19;
    private static final double CHRONIC_UG_L = 11;

    public ChlorineView {
        evidence = List.copyOf(evidence);
    }

    static ChlorineView from(Frame frame) {
        ResidualEstimate e = frame.snapshot().residual();
        String range = "low " + number(e.lowUgL()) + "  likely " + number(e.likelyUgL()) + "  high "
                + number(e.highUgL()) + " ug/L";
        String chance = "chance above acute: " + Words.number(e.probability() * 100, 0) + " %";
        Instant acuteAt = e.acuteAt();
        Tone tone = e.likelyUgL() > ACUTE_UG_L || acuteAt != null
                ? Tone.CRITICAL
                : e.likelyUgL() > CHRONIC_UG_L ? Tone.WARNING : Tone.PLAIN;
        return new ChlorineView(
                range, "acute 19, chronic 11 ug/L (EPA 1985)", chance, verdict(e, frame.at()), e.evidence(), tone);
    }

    private static String verdict(ResidualEstimate e, Instant now) {
        if (e.likelyUgL() > ACUTE_UG_L) {
            return "ABOVE ACUTE";
        }
        Instant acuteAt = e.acuteAt();
        if (acuteAt != null) {
            return "RISING: 19 ug/L in " + Words.span(now, acuteAt);
        }
        if (e.likelyUgL() > CHRONIC_UG_L) {
            return "ABOVE CHRONIC";
        }
        return e.highUgL() > CHRONIC_UG_L ? "not known to be below 11" : "below both";
    }

    private static String number(double ugL) {
        return Words.number(ugL, ugL < 9.95 ? 1 : 0);
    }
}
