package bywash.rules.detect;

/**
 * How badly a flow of rate r from one time to another fits one stretch of volumes, as the quadratic
 * {@code q0 - 2 q1 r + q2 r^2} in chi-square units, less what the best straight line leaves. The stretch has a level of its
 * own, and its slope differs from the usual by a standing error.
 *
 * @param slope of the volumes above the usual slope, L/min
 * @param reach slope that a flow of 1 L/min would give it
 * @param slopeVar variance of {@code slope} from noise and standing error together
 */
record Stretch(double q0, double q1, double q2, double slope, double reach, double slopeVar) {
    /** The means that belong to it, {@code from} inclusive, {@code to} exclusive. */
    record Bounds(int from, int to, double startMin, double endMin) {}

    /** What is usual: slope (L/min), its spread from stretch to stretch, noise of one sample (L). */
    record Usual(double slopeLMin, double spreadLMin, double noiseL) {}

    /** A stretch by itself, whatever flows. */
    static Stretch level(FlowHistory history, Bounds b, Usual usual) {
        return of(history, b, b.endMin() + 1, b.endMin() + 1, usual);
    }

    /** Of a flow between two times. */
    static Stretch of(FlowHistory history, Bounds b, double fromMin, double toMin, Usual usual) {
        double n = 0;
        double meanT = 0;
        double meanX = 0;
        double meanY = 0;
        double tt = 0;
        double xx = 0;
        double yy = 0;
        double xt = 0;
        double yt = 0;
        double yx = 0;
        for (int i = b.from(); i < b.to(); i++) {
            double w = history.samples(i);
            double at = history.tMin(i);
            double t = at - b.startMin();
            double x = StrictMath.max(fromMin, StrictMath.min(toMin, at)) - b.startMin();
            double y = history.volumeL(i) - usual.slopeLMin() * t;
            n += w;
            double dt = t - meanT;
            double dx = x - meanX;
            double dy = y - meanY;
            meanT += w * dt / n;
            meanX += w * dx / n;
            meanY += w * dy / n;
            tt += w * dt * (t - meanT);
            xx += w * dx * (x - meanX);
            yy += w * dy * (y - meanY);
            xt += w * dx * (t - meanT);
            yt += w * dy * (t - meanT);
            yx += w * dy * (x - meanX);
        }
        double noise = usual.noiseL() * usual.noiseL();
        double spread = usual.spreadLMin() * usual.spreadLMin();
        double d = tt + noise / spread;
        double free = tt > 0 ? yt * yt / tt : 0;
        return new Stretch(
                (free - yt * yt / d) / noise,
                (yx - yt * xt / d) / noise,
                (xx - xt * xt / d) / noise,
                tt > 0 ? yt / tt : 0,
                tt > 0 ? xt / tt : 0,
                tt > 0 ? noise / tt + spread : Double.POSITIVE_INFINITY);
    }

    /** The misfit at a rate; what lies above may be an unseen drain and counts for no more than {@code mostAbove}. */
    double misfit(double rateLMin, double mostAbove, double mostBelow) {
        double q = q0 - 2 * q1 * rateLMin + q2 * rateLMin * rateLMin;
        return StrictMath.min(q, slope > reach * rateLMin ? mostAbove : mostBelow);
    }
}
