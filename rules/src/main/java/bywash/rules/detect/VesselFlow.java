package bywash.rules.detect;

import bywash.rules.detect.FlowSigns.Look;
import bywash.rules.detect.LevelViews.Course;
import bywash.rules.detect.PastFlows.Past;
import bywash.rules.detect.RecentVolumes.Point;
import java.time.Duration;
import org.jspecify.annotations.Nullable;

/**
 * Decides, for one vessel's volume in litres over minutes, whether water flows in or out that the known cycles do not
 * explain, and follows it until it is over or proves to be none. {@link Motion} says what leads from one state to another.
 */
final class VesselFlow {
    private static final double MOST_LOSS_L_MIN = 8;
    private static final double SHOWN_OF_BEDS = 0.5;
    private static final double SHOWN_LEAST_L = 40;

    private final LevelViews views;
    private final PumpSense pump;
    private final FlowSigns signs;
    private final FoundFlow found;
    private final PastFlows pasts = new PastFlows();
    private final double shownL;
    private Motion motion = Motion.LEARNING;
    private boolean plannedRuns;

    /**
     * @param startNoiseL noise of one volume to start from, L, one standard deviation
     * @param every between two samples
     * @param brimL the volume at which it overflows, L: what runs over there shows in no level
     */
    VesselFlow(double startNoiseL, Hold hold, Duration every, Pump pump, double brimL) {
        this.views = new LevelViews(startNoiseL, hold, every, pump == Pump.TOLD, brimL);
        this.pump = new PumpSense(pump, hold);
        this.signs = new FlowSigns(views, this.pump);
        this.found = new FoundFlow(views.history(), views.siphons());
        this.shownL = SHOWN_OF_BEDS * hold.bedsL() + SHOWN_LEAST_L;
    }

    void level(double tMin, double litres) {
        if (views.gapBefore(tMin)) {
            views.gap(course());
            pump.gap();
        }
        Point p = views.hear(tMin, litres);
        if (p != null) {
            take(p);
        }
    }

    private void take(Point p) {
        pump.level(p, views);
        if (!holding() && pump.seemsTurned(views)) {
            pump(p.tMin(), pump.stands());
        }
        PumpStop stop = pump.stop();
        stop.listen(p, views.recent());
        if (!stop.suspends(p.tMin())) {
            views.take(p, course());
        } else if (p.tMin() > stop.drainedBackMin()) {
            views.takeStanding(p);
        }
    }

    private Course course() {
        double least = motion == Motion.IN ? 0 : -MOST_LOSS_L_MIN; // of a loss so much that its end shows too
        double known = holding() ? StrictMath.max(least, found.rateLMin()) : 0;
        boolean calm = motion == Motion.STEADY && !plannedRuns;
        return new Course(!pump.stands(), holding() || plannedRuns, calm, known);
    }

    /** The pump is known to run or to stand. */
    void pump(double tMin, boolean on) {
        if (on != pump.stands()) {
            return;
        }
        pump.stop().turned(tMin, on, views.volumeL());
        views.pumpTurned(leave());
        become(on ? Motion.LEARNING : Motion.DRAINING_BACK);
    }

    /** Water is let in as planned from here on, or no more. */
    void planned(boolean running) {
        rebase();
        plannedRuns = running;
        views.planned(running);
    }

    /** Forgets what moved so far: after a planned change the balance starts anew. */
    void rebase() {
        views.beginAnew(leave());
    }

    /** Leaves what was found, which is kept as a past flow unless it was declared; says what went on until then. */
    private Course leave() {
        Course until = course();
        if (undeclared()) {
            pasts.add(moved(views.lastMin()));
        }
        found.clear();
        pump.beginAnew();
        if (motion != Motion.LEARNING) {
            become(Motion.STEADY);
        }
        return until;
    }

    /** A flow whose beginning is known is followed from here on; signed. */
    void follow(double fromMin, double rateLMin) {
        begin(FlowSign.known(fromMin, rateLMin));
    }

    private void begin(FlowSign sign) {
        found.begin(sign);
        become(sign.motion());
    }

    /** The one place where the state changes. */
    private void become(Motion next) {
        motion = next;
    }

    /** Event time reached {@code nowMin}: looks for a flow, or at the one that was found. */
    void decide(double nowMin) {
        if (holding()) {
            follow(nowMin);
        } else if (!pump.stop().suspends(nowMin) || signs.entersWithoutPump(nowMin, plannedRuns)) {
            look(nowMin);
        }
    }

    private void look(double nowMin) {
        Look look = signs.look(nowMin, plannedRuns);
        if (look.sign() != null) {
            begin(look.sign());
            weigh(nowMin);
            return;
        }
        become(look.motion());
        if (look.slowedDown()) {
            rebase();
        }
    }

    /** A flow stands: until it ends, or the mean level says that it never was. */
    private void follow(double nowMin) {
        if (found.endTold()) {
            rebase();
            return;
        }
        found.tellEnd();
        weigh(nowMin);
        boolean shows = views.siphons() && !views.ranOver(nowMin);
        if (shows && found.contradicted(nowMin, shownL, views.slow())) {
            views.relearn();
            become(Motion.STEADY); // it was none, so it is no past flow either
            rebase();
        }
    }

    private void weigh(double nowMin) {
        found.weigh(views.usual(!pump.stands(), spreadLMin()), views.standingSdLMin(), nowMin);
    }

    /** How far the slope of one stretch usually lies from that of another, L/min. */
    private double spreadLMin() {
        return StrictMath.max(FlowEvidence.STEADY_SD_L_MIN, views.fill().spreadLMin());
    }

    private boolean holding() {
        return motion == Motion.IN || motion == Motion.OUT;
    }

    /** Whether water moves that was found here and that nobody declared. */
    boolean undeclared() {
        return holding() && !plannedRuns;
    }

    Motion motion() {
        return motion;
    }

    /** Signed, L/min. */
    double rateLMin() {
        return found.rateLMin();
    }

    /** One standard error, L/min. */
    double rateSeLMin() {
        return found.rateSeLMin();
    }

    /** What has moved by now, or until its end. */
    Past moved(double nowMin) {
        return found.until(nowMin, views.noiseL());
    }

    /** Litres that came by now, signed. */
    double movedL(double nowMin) {
        return found.litres(nowMin);
    }

    /** One standard error, L. */
    double movedSeL(double nowMin) {
        return StrictMath.hypot(found.litresSe(nowMin), views.noiseL());
    }

    double onsetMin() {
        return found.onsetMin();
    }

    /** What its volumes show, whatever is decided. */
    LevelViews views() {
        return views;
    }

    /** When the flow ended, told once at its end; NaN while it runs. */
    double endMin() {
        return found.endMin();
    }

    /** The last flow that is over; null where there was none. */
    @Nullable
    Past past() {
        return pasts.last();
    }

    /** Those kept, oldest first. */
    PastFlows pasts() {
        return pasts;
    }

    /** How fast it rose or fell between two times beyond its usual slope, L/min. */
    Slope slope(double fromMin, double toMin) {
        return views.history().slope(fromMin, toMin, views.usual(!pump.stands(), spreadLMin()));
    }

    /** The volume from which it rises to its brim: at the top of its swing where siphons move it. */
    double highL(double nowMin) {
        double high = views.swing().highL(nowMin, found.onsetMin(), found.rateLMin());
        return Double.isNaN(high) ? views.volumeL() : StrictMath.max(high, views.volumeL());
    }

    /** The volume from which it falls dry likewise. */
    double lowL(double nowMin) {
        double low = views.swing().lowL(nowMin, found.onsetMin(), found.rateLMin());
        return Double.isNaN(low) ? views.volumeL() : StrictMath.min(low, views.volumeL());
    }
}
