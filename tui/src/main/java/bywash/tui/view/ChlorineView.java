package bywash.tui.view;

import bywash.rules.chlorine.Crossing;
import bywash.rules.chlorine.ResidualEstimate;
import bywash.rules.detect.FlowFinding.Verdict;
import bywash.rules.engine.VesselStatus;
import bywash.rules.husbandry.season.SeasonStatus;
import bywash.rules.husbandry.stock.SpeciesLimits;
import bywash.rules.site.VesselRole;
import bywash.rules.text.Spans;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * The chlorine estimate against the limit of a species in the system that has its own, else the US EPA 1985 criteria for fresh
 * water: acute 19 ug/L (1 h mean), chronic 11 ug/L (4 d mean).
 */
public record ChlorineView(
        String range, String criteria, String chance, String verdict, List<String> evidence, Tone tone) {
    public ChlorineView {
        evidence = List.copyOf(evidence);
    }

    /** Less is shown as 0.0. */
    private static final double LEAST_UG_L = 0.05;

    static ChlorineView from(Frame frame) {
        ResidualEstimate e = frame.snapshot().residual();
        String range = "low " + number(e.lowUgL()) + "  likely " + number(e.likelyUgL()) + "  high "
                + number(e.highUgL()) + " ug/L";
        String chance = "chance above acute: " + Words.number(e.probability() * 100, 0) + " %";
        Instant acuteAt = e.acuteAt();
        Tone tone = e.likelyUgL() > e.acute().limitUgL() || acuteAt != null
                ? Tone.CRITICAL
                : e.likelyUgL() > e.chronic().limitUgL() ? Tone.WARNING : Tone.PLAIN;
        String blind = tone == Tone.PLAIN ? blind(frame) : "";
        String verdict = blind.isEmpty() ? verdict(e, frame.at()) : "not known: " + blind;
        if (!blind.isEmpty()) {
            // what was known before is no figure for now, and none at all is no zero
            range = e.highUgL() < LEAST_UG_L ? "no figure yet" : "was " + range;
            chance = "chance above acute: not known";
        }
        return new ChlorineView(range, criteria(frame), chance, verdict, lines(e, frame), tone);
    }

    /** Why an inflow would not be seen now; empty where it would. */
    private static String blind(Frame frame) {
        return !frame.snapshot().feedUp()
                ? "the feed is lost"
                : levelJudged(frame.snapshot().vessels()) ? "" : "no level to judge by";
    }

    /** Whether the level of any vessel of the system could show an inflow. */
    private static boolean levelJudged(List<VesselStatus> vessels) {
        return vessels.stream()
                .filter(v -> v.vessel().role() != VesselRole.RESERVE)
                .anyMatch(
                        v -> v.flow() != null && v.flow().verdict() != Verdict.LEARNING && !Double.isNaN(v.levelMm()));
    }

    /** What the water is held against: the species' own where one here has its own. */
    static SpeciesLimits limits(Frame frame) {
        SeasonStatus season = frame.snapshot().season();
        return season == null
                ? SpeciesLimits.GENERAL
                : SpeciesLimits.of(frame.snapshot().site(), season.cohorts());
    }

    private static String criteria(Frame frame) {
        SpeciesLimits limits = limits(frame);
        return limits.ownChlorine() ? limits.chlorineWords() : "acute 19, chronic 11 ug/L (EPA 1985)";
    }

    private static String verdict(ResidualEstimate e, Instant now) {
        if (e.likelyUgL() > e.acute().limitUgL()) {
            return likely(e.lowUgL() > e.acute().limitUgL()) + "ABOVE ACUTE";
        }
        Instant acuteAt = e.acuteAt();
        if (acuteAt != null) {
            return (e.doubted() ? "MAY RISE: " : "RISING: ")
                    + Words.number(e.acute().limitUgL(), 0) + " ug/L " + Spans.ahead(now, acuteAt);
        }
        if (e.likelyUgL() > e.chronic().limitUgL()) {
            return likely(e.lowUgL() > e.chronic().limitUgL()) + "ABOVE CHRONIC";
        }
        return e.highUgL() > e.chronic().limitUgL()
                ? "not known to be below " + Words.number(e.chronic().limitUgL(), 0)
                : "below both criteria";
    }

    /** What only part of the range says is likely, not so. */
    private static String likely(boolean wholeRange) {
        return wholeRange ? "" : "LIKELY ";
    }

    /** What lies ahead of the range, then the evidence. */
    private static List<String> lines(ResidualEstimate e, Frame frame) {
        String ahead = rises(e.chronic(), frame) + rises(e.acute(), frame);
        if (ahead.isEmpty()) {
            ahead = e.likelyUgL() > e.acute().limitUgL() ? falls(e.acute(), frame) : falls(e.chronic(), frame);
        }
        List<String> lines = new ArrayList<>();
        e.evidence().forEach(line -> lines.add(UsWords.water(line, frame)));
        if (!ahead.isEmpty()) {
            String alone = e.doubted() && e.acute().rising() ? "by the balance alone " : "";
            lines.add(0, "Ahead: " + alone + ahead.replaceFirst(", $", ""));
        }
        return lines;
    }

    /** Such as {@code 19 ug/L in 6 min (in 2 min at worst), }; empty where it is passed or is not going to be. */
    private static String rises(Crossing crossing, Frame frame) {
        Instant likely = crossing.likely();
        if (!crossing.rising() || likely == null || !likely.isAfter(frame.at())) {
            return "";
        }
        String when = Spans.ahead(frame.at(), likely);
        return Words.number(crossing.limitUgL(), 0) + " ug/L " + when + atWorst(crossing, when, frame) + ", ";
    }

    private static String atWorst(Crossing crossing, String likely, Frame frame) {
        Instant earliest = crossing.earliest();
        if (earliest == null) {
            return "";
        }
        if (!earliest.isAfter(frame.at())) {
            return " (at worst passed already)";
        }
        String worst = Spans.ahead(frame.at(), earliest);
        return worst.equals(likely) ? "" : " (" + worst + " at worst)";
    }

    private static String falls(Crossing crossing, Frame frame) {
        Instant likely = crossing.likely();
        if (crossing.rising() || likely == null) {
            return "";
        }
        Instant latest = crossing.latest();
        String until = latest == null ? "" : ", at the latest " + clock(latest, frame);
        return "below " + Words.number(crossing.limitUgL(), 0) + " ug/L about " + clock(likely, frame) + until
                + ", if no more comes in";
    }

    private static String clock(Instant at, Frame frame) {
        return Words.clock(at, frame.at(), frame.snapshot().site().timeZone());
    }

    private static String number(double ugL) {
        return Words.number(ugL, ugL < 9.95 ? 1 : 0);
    }
}
