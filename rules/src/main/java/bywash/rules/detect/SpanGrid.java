package bywash.rules.detect;

import bywash.rules.detect.FlowSpan.Prior;
import bywash.rules.detect.Stretch.Bounds;
import bywash.rules.detect.Stretch.Usual;
import java.util.List;

/**
 * Weighs every onset, end and rate of a grid by how well the stretches of a {@link FlowHistory} fit them. Minutes, L/min.
 * What lies above a slope may be an unseen drain where there are siphons, and then counts for less.
 */
final class SpanGrid {
    /** The least step between two ends, and between an onset and now. */
    private static final double STEP_MIN = 0.5;

    private static final int ONSETS = 31;
    private static final double FARTHEST = 2.5;
    private static final int ENDS = 70;
    private static final int RATES = 21;
    private static final double GRID_SIGMAS = 3.5;
    /** No rate is looked at more closely than by this share of it. */
    static final double FINEST_SHARE = 0.02;

    /** How probable an end is in any one minute, before the slopes are heard. */
    private static final double ENDS_PER_MIN = 1.0 / 40;

    private static final double MOST_ABOVE = 14;
    private static final double MOST_BELOW = 40;
    private static final double LEAST_SHARE = 1e-7;

    private final FlowHistory history;
    private final List<Bounds> bounds;
    private final Prior prior;
    private final double nowMin;
    private final Usual usual;
    private final double[] onsets;
    private final double[] ends;
    private final double stepMin;
    private final double mostAbove;

    /**
     * @param bounds of the stretches that are asked
     * @param siphons whether some of them may hide a drain
     */
    SpanGrid(FlowHistory history, List<Bounds> bounds, boolean siphons, Prior prior, Usual usual, double nowMin) {
        this.history = history;
        this.bounds = bounds;
        this.mostAbove = siphons ? MOST_ABOVE : MOST_BELOW;
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

    /** With rates about a centre. */
    SpanMoments over(double centre, double sd) {
        double[] rates = new double[RATES];
        double least = FINEST_SHARE * StrictMath.abs(centre);
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

    private SpanMoments sums(double[][][] logs, double best, double[] rates) {
        SpanMoments sums = new SpanMoments();
        double least = StrictMath.log(LEAST_SHARE);
        for (int i = 0; i < onsets.length; i++) {
            for (int j = 0; j < ends.length; j++) {
                for (int k = 0; k < RATES; k++) {
                    double log = logs[i][j][k] - best;
                    if (log > least) {
                        double w = StrictMath.exp(log);
                        sums.add(w, onsets[i], ends[j], rates[k], j == ends.length - 1, k == 0 || k == RATES - 1);
                    }
                }
            }
        }
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
