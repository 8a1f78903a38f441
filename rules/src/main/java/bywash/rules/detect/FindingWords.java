package bywash.rules.detect;

import bywash.rules.detect.FlowFinding.Part;
import bywash.rules.detect.FlowFinding.Verdict;
import bywash.rules.detect.ReserveEvidence.Lost;
import bywash.rules.site.Site;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import bywash.rules.text.Sentence;
import bywash.rules.text.Spans;
import java.time.Instant;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Makes findings of what the flows show: source, times to overflow and to dry, and the reasons in words. */
final class FindingWords {
    private static final String OUTSIDE = "outside";
    private static final String UNKNOWN = "unknown";
    private static final String PUMP_STOPPED = "The pump has stopped: pipes and beds drain back, a bounded rise.";
    private static final String PUMP_OR_INFLOW =
            "The level moves as it does when the pump stops and pipes drain back, but no probe tells. Does the pump run? Then"
                    + " this is water that nobody declared; within minutes the level tells.";
    private static final double SOON_MIN = 30;
    private static final double SURE_SES = 3;
    private static final double CERTAIN_SES = 6;
    private static final double LEAST_FALL_L_MIN = 0.2;

    private final Site site;
    private final Map<String, VesselFlow> flows;
    private final boolean pumpTold;

    /** @param pumpTold whether a probe tells of the pump */
    FindingWords(Site site, Map<String, VesselFlow> flows, boolean pumpTold) {
        this.pumpTold = pumpTold;
        this.site = site;
        this.flows = flows;
    }

    FlowFinding blind(String vessel, double silenceMin) {
        String why = Double.isNaN(silenceMin)
                ? "No level received yet; nothing can be said."
                : "No level for " + Spans.ofMinutes(silenceMin) + "; nothing can be said.";
        return new FlowFinding(vessel, Verdict.LEARNING, Double.NaN, Double.NaN, 0, 0, null, UNKNOWN, null, null, why);
    }

    FlowFinding plain(Vessel vessel, VesselFlow flow, Verdict verdict, Instant start, double nowMin) {
        return switch (verdict) {
            case LEARNING -> still(vessel, verdict, learning(vessel, flow));
            case QUIET -> still(vessel, verdict, "The level does what its known cycles explain.");
            case DRAIN_DOWN -> still(vessel, verdict, pumpTold ? PUMP_STOPPED : PUMP_OR_INFLOW);
            case PLANNED, UNPLANNED_INFLOW, UNPLANNED_LOSS, LINE_NOT_SHUT ->
                moving(vessel, flow, verdict, start, nowMin);
        };
    }

    private String learning(Vessel vessel, VesselFlow flow) {
        boolean siphons = vessel.role() == VesselRole.SUMP
                && !site.vessels(VesselRole.GROW_BED).isEmpty();
        String what = siphons ? "Learning the siphon cycles" : "Learning the noise of the level";
        double least = flow.views().findsLMin(SOON_MIN);
        return Double.isNaN(least)
                ? what + "; for some minutes no flow can be told."
                : Sentence.of(
                        "%s; meanwhile a flow of %.1f L/min or more is found within %.0f min.", what, least, SOON_MIN);
    }

    private static FlowFinding still(Vessel vessel, Verdict verdict, String why) {
        return new FlowFinding(vessel.id(), verdict, 0, 0, 0, 0, null, UNKNOWN, null, null, why);
    }

    private FlowFinding moving(Vessel vessel, VesselFlow flow, Verdict verdict, Instant start, double nowMin) {
        double rate = flow.rateLMin();
        boolean over = !Double.isNaN(flow.endMin());
        Source source = rate > 0 ? source(vessel, flow, nowMin) : new Source(UNKNOWN, "");
        String why = Sentence.of(
                "Beyond noise and cycles: %+.1f +/- %.1f L/min. %s", rate, 2 * flow.rateSeLMin(), source.words());
        return new FlowFinding(
                vessel.id(),
                verdict,
                rate,
                flow.rateSeLMin(),
                flow.movedL(nowMin),
                flow.movedSeL(nowMin),
                0,
                at(start, flow.onsetMin()),
                over ? at(start, flow.endMin()) : null,
                source.id(),
                part(source.lost(), start),
                over ? null : overflowAt(vessel, flow, Comes.on(rate), start, nowMin),
                over ? null : dryAt(flow, rate, start, nowMin),
                why.strip());
    }

    FlowFinding declared(
            Vessel vessel, TopUpWatch watch, Verdict verdict, boolean target, Instant start, double nowMin) {
        double sign = target ? 1 : -1;
        double rate = StrictMath.max(0, watch.rateLMin());
        double litres = watch.ended() ? watch.openL(nowMin) : watch.enteredL();
        double se = watch.ended() ? watch.openSeL(nowMin) : watch.enteredSeL();
        VesselFlow flow = flows.get(vessel.id());
        Instant overflowAt = flow == null || !target
                ? null
                : overflowAt(vessel, flow, new Comes(rate, watch.toComeL()), start, nowMin);
        double declaredL = watch.line() == TopUpWatch.Line.OVERRUN ? watch.plannedL() : 0;
        FlowFinding finding = new FlowFinding(
                vessel.id(),
                verdict,
                sign * rate,
                finite(watch.rateSeLMin()),
                sign * litres,
                se,
                sign * declaredL,
                at(start, watch.sinceMin()),
                null,
                watch.source(),
                null,
                overflowAt,
                null,
                "");
        return finding.because(why(watch, finding));
    }

    private static String why(TopUpWatch watch, FlowFinding finding) {
        if (watch.ended()) {
            return watch.words().isEmpty()
                    ? "The top-up was ended; the balance checks that the line is shut."
                    : "The top-up was ended. " + watch.words() + ".";
        }
        String came = finding.moved().words();
        return finding.ranOver()
                ? Sentence.of(
                        "Declared: %.0f L. Came in: %s, %s of them more than declared.",
                        watch.plannedL(), came, finding.beyond().words())
                : Sentence.of("Declared top-up: %s of %.0f L.", came, watch.plannedL());
    }

    private static double finite(double value) {
        return Double.isFinite(value) ? value : 0;
    }

    /** Where water comes from, the words that say how sure that is, and what a reserve lost that may not be all of it. */
    private record Source(String id, String words, @Nullable Lost lost) {
        Source(String id, String words) {
            this(id, words, null);
        }
    }

    private static @Nullable Part part(@Nullable Lost lost, Instant start) {
        return lost == null
                ? null
                : new Part(
                        lost.reserve(),
                        lost.litres(),
                        lost.se(),
                        Double.isNaN(lost.untilMin()) ? null : at(start, lost.untilMin()));
    }

    /**
     * A reserve that falls as fast as this vessel rises, or fills by as much more slowly, is the source; with every reserve
     * surely steady it is outside. Until a reserve's own error tells these apart the source is unknown.
     */
    private Source source(Vessel vessel, VesselFlow flow, double nowMin) {
        String steady = "";
        Lost some = null;
        double surest = Double.POSITIVE_INFINITY;
        for (Vessel reserve : site.vessels(VesselRole.RESERVE)) {
            if (reserve.id().equals(vessel.id())) {
                continue;
            }
            ReserveEvidence e = ReserveEvidence.of(reserve.id(), flows.get(reserve.id()), flow, nowMin);
            Lost lost = e.lost();
            if (!e.known()) {
                String what = lost == null ? "): it" : "): the rest";
                return new Source(
                        UNKNOWN,
                        "Where it comes from is not known (" + e.words() + what + " counts as mains water.",
                        lost);
            }
            double missing = e.missingLMin();
            double se = e.seLMin();
            double error = 2 * (se + flow.rateSeLMin()) + 0.3 * flow.rateLMin();
            if (missing > SURE_SES * se
                    && missing > LEAST_FALL_L_MIN
                    && StrictMath.abs(missing - flow.rateLMin()) < error) {
                return new Source(
                        reserve.id(),
                        e.words() + ", as fast as this rises: the water " + sure(missing / se) + " comes from there.");
            }
            if (missing + 2 * se > flow.rateLMin() / 2) {
                return new Source(
                        UNKNOWN, e.words() + ", too early to say whether from there: it counts as mains water.", lost);
            }
            some = some == null ? lost : some;
            surest = StrictMath.min(surest, (flow.rateLMin() / 2 - missing) / se);
            steady = steady.isEmpty() ? e.words() : steady + ", " + e.words();
        }
        return new Source(
                OUTSIDE,
                "No reserve loses water" + (steady.isEmpty() ? "" : " (" + steady + ")") + ": the water " + sure(surest)
                        + " comes from outside and counts as mains water.",
                some);
    }

    /** How sure so many standard errors make it, in words. */
    private static String sure(double standardErrors) {
        return standardErrors > CERTAIN_SES ? "certainly" : standardErrors > SURE_SES ? "very likely" : "likely";
    }

    /** Water that comes at a rate, L/min, up to so many litres. */
    private record Comes(double rateLMin, double mostL) {
        static Comes on(double rateLMin) {
            return new Comes(rateLMin, Double.POSITIVE_INFINITY);
        }
    }

    private static @Nullable Instant overflowAt(
            Vessel vessel, VesselFlow flow, Comes comes, Instant start, double nowMin) {
        if (comes.rateLMin() <= 0.05 || vessel.shape() == null) {
            return null;
        }
        double room = vessel.shape()
                        .volumeL(StrictMath.min(
                                vessel.overflowMm(), vessel.shape().heightMm()))
                - flow.highL(nowMin);
        return room > comes.mostL() ? null : at(start, nowMin + StrictMath.max(0, room) / comes.rateLMin());
    }

    private static @Nullable Instant dryAt(VesselFlow flow, double rate, Instant start, double nowMin) {
        return rate >= -0.05 ? null : at(start, nowMin + StrictMath.max(0, flow.lowL(nowMin)) / -rate);
    }

    private static Instant at(Instant start, double minutes) {
        return start.plusSeconds(StrictMath.round(minutes * 60));
    }
}
