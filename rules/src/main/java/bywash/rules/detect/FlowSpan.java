package bywash.rules.detect;

import bywash.rules.detect.Stretch.Bounds;
import bywash.rules.detect.Stretch.Usual;
import java.util.ArrayList;
import java.util.List;

/**
 * How much water a found flow has brought: its rate, when it began and when it ended, weighed together.
 *
 * <p>The slope of the volume steps up at the onset and down at the end. Each pair of onset and end, and each rate, is weighed
 * by how well it fits the stretches between drains (a Bayesian change-point of the slope with flat prior on the end), so that
 * litres have a range that knows of all three, and the end is found as soon as the slopes tell it. Minutes, L/min, litres.
 *
 * <p>Source: A. F. M. Smith, 1975, A Bayesian approach to inference about a change-point in a sequence of random variables,
 * Biometrika 62(2), 407-416; here with two change-points of a slope.
 */
final class FlowSpan {
    private static final int ONSETS = 31;
    private static final double FARTHEST = 2.5;
    private static final int ENDS = 70;
    private static final int RATES = 21;
    private static final double GRID_SIGMAS = 3.5;
    private static final double BEFORE_MIN = 90;
    private static final double STEP_MIN = 0.5;
    /** How probable an end is in any one minute, before the slopes are heard. */
    private static final double ENDS_PER_MIN = 1.0 / 40;

    private static final double MOST_ABOVE = 14;
    private static final double MOST_BELOW = 40;
    /** Valves and pressure are not quite steady: so much of the rate may differ from stretch to stretch. */
    private static final double UNSTEADY = 0.08;

    /** Shorter ones tell no slope of their own. */
    private static final double LEAST_STRETCH_MIN = 1 - 1e-6;

    private static final double LEAST_SHARE = 1e-7;

    /**
     * What is thought before the slopes are heard.
     *
     * @param earlyMin how much earlier it may have begun, all of it alike; 0 where the onset is given
     * @param lateSdMin how much later, one standard deviation
     * @param rateLMin signed
     * @param rateLogSd standard deviation of the rate's logarithm
     */
    record Prior(double onsetMin, double earlyMin, double lateSdMin, double rateLMin, double rateLogSd) {}

    /**
     * What is known now; errors are one standard error.
     *
     * @param endMin when it ended, where it has
     * @param ended how probable it is that it has
     */
    record Estimate(
            double rateLMin,
            double rateSeLMin,
            double litres,
            double litresSe,
            double onsetMin,
            double endMin,
            double ended) {}

    private final FlowHistory history;
    private final boolean siphons;
    private List<Bounds> bounds = List.of();

    FlowSpan(FlowHistory history, boolean siphons) {
        this.history = history;
        this.siphons = siphons;
    }

    /** @param standingSd error of the usual slope itself, L/min; @param guess where the rate is thought to lie by now */
    Estimate weigh(Prior prior, Usual usual, double standingSd, double nowMin, double[] guess) {
        double earliest = prior.onsetMin() - prior.earlyMin();
        gather(earliest - BEFORE_MIN);
        double[] offset = offset(earliest, usual, standingSd);
        double spread = StrictMath.hypot(usual.spreadLMin(), UNSTEADY * StrictMath.abs(prior.rateLMin()));
        Usual during = new Usual(usual.slopeLMin() + offset[0], spread, usual.noiseL());
        bounds = bounds.stream().filter(b -> b.endMin() > earliest).toList();
        double centre = guess[0];
        double sd = guess[1];
        Weights weights = new Weights(prior, during, nowMin);
        Sums sums = weights.over(centre, sd);
        for (int again = 0; again < 4; again++) {
            double found = StrictMath.max(sums.rateSd(), 0.02 * StrictMath.abs(centre));
            boolean inside = sums.edge < 0.01 && sd < 2.5 * found;
            if (inside) {
                break;
            }
            centre = sums.rate();
            sd = sums.edge < 0.01 ? found : 2 * sd;
            sums = weights.over(centre, sd);
        }
        guess[0] = sums.rate();
        guess[1] = StrictMath.max(sums.rateSd(), 0.02 * StrictMath.abs(guess[0]));
        return sums.estimate(offset[1]);
    }

    /**
     * What the stretches of the last minutes alone say.
     *
     * @param leastLMin of the one that a drain may have lifted least, L/min
     * @param fromMin where they begin
     * @param gapMin how long before that nothing was seen
     * @param alike whether each of them lies on the same side of {@code thanLMin}, by two of its own standard errors
     */
    record Lately(
            double rateLMin,
            double leastLMin,
            double seLMin,
            double fromMin,
            double gapMin,
            double minutes,
            boolean alike) {}

    /** Of the last stretches from a time on, at least so many minutes of them, against a rate; without any, of no minutes. */
    Lately lately(double fromMin, double leastMin, double thanLMin, Usual usual) {
        double shortest = StrictMath.min(leastMin, LEAST_STRETCH_MIN);
        gather(fromMin);
        double weight = 0;
        double sum = 0;
        double minutes = 0;
        double from = Double.NaN;
        double before = fromMin;
        double lowest = Double.POSITIVE_INFINITY;
        int above = 0;
        int below = 0;
        int count = 0;
        for (int b = bounds.size() - 1; b >= 0; b--) {
            Bounds at = bounds.get(b);
            if (minutes >= leastMin && count >= (siphons ? 2 : 1)) {
                before = at.endMin();
                break;
            }
            Stretch s = Stretch.of(history, at, at.endMin() + 1, at.endMin() + 1, usual);
            if (at.endMin() - at.startMin() < shortest) {
                continue;
            }
            double w = 1 / s.slopeVar();
            double z = (s.slope() - thanLMin) * StrictMath.sqrt(w);
            above += z > 2 ? 1 : 0;
            below += z < -2 ? 1 : 0;
            count++;
            weight += w;
            sum += w * s.slope();
            lowest = StrictMath.min(lowest, s.slope());
            minutes += at.endMin() - at.startMin();
            from = at.startMin();
        }
        boolean alike = count > 0 && (above == count || below == count);
        return new Lately(sum / weight, lowest, 1 / StrictMath.sqrt(weight), from, from - before, minutes, alike);
    }

    private void gather(double fromMin) {
        List<Bounds> found = new ArrayList<>();
        int i = history.from(fromMin);
        while (i < history.size()) {
            int to = i + 1;
            while (to < history.size() && history.stretch(to) == history.stretch(i)) {
                to++;
            }
            if (to - i > 1) {
                found.add(new Bounds(i, to, history.tMin(i), history.tMin(to - 1)));
            }
            i = to;
        }
        bounds = found;
    }

    /** How far the slopes just before lie from the usual one, L/min, and the variance of that. */
    private double[] offset(double beforeMin, Usual usual, double standingSd) {
        double weight = 1 / (standingSd * standingSd);
        double sum = 0;
        for (Bounds b : bounds) {
            if (b.endMin() < beforeMin) {
                Stretch s = Stretch.of(history, b, b.endMin() + 1, b.endMin() + 1, usual);
                double most = 2.5 * StrictMath.sqrt(s.slopeVar());
                double w = 1 / s.slopeVar();
                sum += w * StrictMath.max(-most, StrictMath.min(most, s.slope()));
                weight += w;
            }
        }
        return new double[] {sum / weight, 1 / weight};
    }

    /** Moments of what was weighed. */
    private static final class Sums {
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

        double rate() {
            return rates / all;
        }

        double rateSd() {
            return StrictMath.sqrt(StrictMath.max(0, rates2 / all - rate() * rate()));
        }

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

    /** Weighs every onset, end and rate of a grid. */
    private final class Weights {
        private final Prior prior;
        private final double nowMin;
        private final Usual usual;
        private final double[] onsets;
        private final double[] ends;
        private final double stepMin;
        private final double mostAbove = siphons ? MOST_ABOVE : MOST_BELOW;

        Weights(Prior prior, Usual usual, double nowMin) {
            this.prior = prior;
            this.usual = usual;
            this.nowMin = nowMin;
            int count = prior.earlyMin() > 0 ? ONSETS : 1;
            double from = prior.onsetMin() - prior.earlyMin();
            double to = StrictMath.min(nowMin - STEP_MIN, prior.onsetMin() + FARTHEST * prior.lateSdMin());
            onsets = new double[count];
            for (int i = 0; i < count; i++) {
                onsets[i] = count == 1 ? prior.onsetMin() : from + (to - from) * i / (count - 1);
            }
            stepMin = StrictMath.max(STEP_MIN, (nowMin - onsets[0]) / ENDS);
            int most = StrictMath.max(0, (int) ((nowMin - onsets[0]) / stepMin) - 1);
            ends = new double[most + 1];
            for (int j = 0; j <= most; j++) {
                ends[j] = nowMin - (most - j) * stepMin;
            }
        }

        Sums over(double centre, double sd) {
            double[] rates = new double[RATES];
            double least = 0.02 * StrictMath.abs(centre);
            for (int k = 0; k < RATES; k++) {
                double z = -GRID_SIGMAS + 2 * GRID_SIGMAS * k / (RATES - 1);
                double rate = centre + z * StrictMath.max(sd, least);
                rates[k] = rate * centre > 0 ? rate : centre * 1e-3;
            }
            double[][][] logs = logs(rates);
            double best = Double.NEGATIVE_INFINITY;
            for (double[][] byEnd : logs) {
                for (double[] byRate : byEnd) {
                    for (double each : byRate) {
                        best = StrictMath.max(best, each);
                    }
                }
            }
            return sums(logs, best, rates);
        }

        private Sums sums(double[][][] logs, double best, double[] rates) {
            Sums sums = new Sums();
            double least = StrictMath.log(LEAST_SHARE);
            for (int i = 0; i < onsets.length; i++) {
                for (int j = 0; j < ends.length; j++) {
                    double minutes = ends[j] - onsets[i];
                    for (int k = 0; k < RATES; k++) {
                        double log = logs[i][j][k] - best;
                        if (log > least) {
                            double w = StrictMath.exp(log);
                            double r = rates[k];
                            sums.all += w;
                            sums.rates += w * r;
                            sums.rates2 += w * r * r;
                            sums.litres += w * r * minutes;
                            sums.litres2 += w * r * minutes * r * minutes;
                            sums.minutes += w * minutes;
                            sums.onsets += w * onsets[i];
                            if (j < ends.length - 1) {
                                sums.ended += w;
                                sums.ends += w * ends[j];
                            }
                            sums.edge += k == 0 || k == RATES - 1 ? w : 0;
                        }
                    }
                }
            }
            sums.edge /= sums.all;
            return sums;
        }

        private double[][][] logs(double[] rates) {
            int n = bounds.size();
            double[] out = new double[n + 1];
            double[][] in = new double[n + 1][RATES];
            for (int b = 0; b < n; b++) {
                Bounds at = bounds.get(b);
                out[b + 1] = out[b] + fit(b, at.endMin(), at.endMin()).misfit(0, mostAbove, MOST_BELOW);
                Stretch whole = fit(b, at.startMin(), at.endMin());
                for (int k = 0; k < RATES; k++) {
                    in[b + 1][k] = in[b][k] + whole.misfit(rates[k], mostAbove, MOST_BELOW);
                }
            }
            double[][][] logs = new double[onsets.length][ends.length][RATES];
            double[][] atEnd = new double[ends.length][];
            int[] last = new int[ends.length];
            for (int j = 0; j < ends.length; j++) {
                last[j] = lastBefore(ends[j]);
                atEnd[j] = last[j] < 0 ? new double[RATES] : misfits(last[j], -1e9, ends[j], rates);
            }
            for (int i = 0; i < onsets.length; i++) {
                int from = firstAfter(onsets[i]);
                double[] atOnset = from < n ? misfits(from, onsets[i], 1e9, rates) : new double[RATES];
                double z = off(onsets[i] - prior.onsetMin());
                for (int j = 0; j < ends.length; j++) {
                    double[] both = from == last[j] ? misfits(from, onsets[i], ends[j], rates) : null;
                    boolean running = j == ends.length - 1;
                    double start = -z * z / 2 + (running ? 0 : StrictMath.log(ENDS_PER_MIN * stepMin));
                    for (int k = 0; k < RATES; k++) {
                        double misfit;
                        if (ends[j] <= onsets[i]) {
                            misfit = Double.POSITIVE_INFINITY;
                        } else if (from > last[j]) {
                            misfit = out[n];
                        } else if (both != null) {
                            misfit = out[from] + both[k] + out[n] - out[last[j] + 1];
                        } else {
                            misfit = out[from]
                                    + atOnset[k]
                                    + in[last[j]][k]
                                    - in[from + 1][k]
                                    + atEnd[j][k]
                                    + out[n]
                                    - out[last[j] + 1];
                        }
                        logs[i][j][k] = start - misfit / 2 + logPrior(rates[k]);
                    }
                }
            }
            return logs;
        }

        private double off(double minutes) {
            return minutes > 0 && prior.lateSdMin() > 0 ? minutes / prior.lateSdMin() : 0;
        }

        private double logPrior(double rate) {
            double z = StrictMath.log(rate / prior.rateLMin()) / prior.rateLogSd();
            return -z * z / 2 - StrictMath.log(StrictMath.abs(rate));
        }

        private Stretch fit(int b, double fromMin, double toMin) {
            return Stretch.of(history, bounds.get(b), fromMin, toMin, usual);
        }

        private double[] misfits(int b, double fromMin, double toMin, double[] rates) {
            Stretch fit = fit(b, fromMin, toMin);
            double[] misfits = new double[RATES];
            for (int k = 0; k < RATES; k++) {
                misfits[k] = fit.misfit(rates[k], mostAbove, MOST_BELOW);
            }
            return misfits;
        }

        private int firstAfter(double tMin) {
            int b = 0;
            while (b < bounds.size() && bounds.get(b).endMin() <= tMin) {
                b++;
            }
            return b;
        }

        private int lastBefore(double tMin) {
            int b = bounds.size() - 1;
            while (b >= 0 && bounds.get(b).startMin() >= tMin) {
                b--;
            }
            return b;
        }
    }
}
