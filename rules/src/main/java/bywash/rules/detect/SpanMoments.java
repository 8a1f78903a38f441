package bywash.rules.detect;

import bywash.rules.detect.FlowSpan.Estimate;

/** Moments of onset, end and rate over all that a {@link SpanGrid} weighed. Minutes, L/min, litres. */
final class SpanMoments {
    private double all;
    private double rates;
    private double rates2;
    private double litres;
    private double litres2;
    private double minutes;
    private double onsets;
    private double ended;
    private double ends;
    private double edge;

    /** One of them and its weight; whether the flow still runs by it, and whether its rate is at the grid's edge. */
    void add(double w, double onset, double end, double rate, boolean runs, boolean atEdge) {
        double length = end - onset;
        all += w;
        rates += w * rate;
        rates2 += w * rate * rate;
        litres += w * rate * length;
        litres2 += w * rate * length * rate * length;
        minutes += w * length;
        onsets += w * onset;
        if (!runs) {
            ended += w;
            ends += w * end;
        }
        edge += atEdge ? w : 0;
    }

    /** Share of the weight at the edge of the rates, which are then too few. */
    double edge() {
        return edge / all;
    }

    double rate() {
        return rates / all;
    }

    double rateSd() {
        return StrictMath.sqrt(StrictMath.max(0, rates2 / all - rate() * rate()));
    }

    /** @param offsetVar variance of the usual slope, which counts for as long as it flowed */
    Estimate estimate(double offsetVar) {
        double mean = litres / all;
        double length = minutes / all;
        double var = StrictMath.max(0, litres2 / all - mean * mean) + offsetVar * length * length;
        return new Estimate(
                rate(),
                StrictMath.sqrt(rateSd() * rateSd() + offsetVar),
                mean,
                StrictMath.sqrt(var),
                onsets / all,
                ended > 0 ? ends / ended : Double.NaN,
                ended / all);
    }
}
