package bywash.rules.detect;

import bywash.rules.detect.RecentVolumes.Point;
import java.util.ArrayDeque;

/**
 * Cuts volumes into fill phases where the level turned, and hands what lies inside them to those who read slopes and keep
 * the book. A turn is noticed late: so volumes wait until they are surely inside, and a phase begins anew from where a
 * drain is found to have ended.
 */
final class PhaseFeed {
    /** So many samples beside a turn of the level belong to neither side of it. */
    private static final double EDGE_SAMPLES = 0.6;

    private static final double SURELY_INSIDE_MIN = 0.15;
    private static final double SURELY_OVER_MIN = 0.35;
    private static final double SAMPLES = 1.2;
    /** A bend is looked for among so much on its other side. */
    private static final double BESIDE_MIN = 0.6;

    private final FillPhase fill;
    private final RampGlr glr;
    private final BedBook book;
    private final DrainWatch drains;
    private final RecentVolumes recent;
    private final double everyMin;
    private final boolean siphons;
    private final FlowHistory history;
    private final ArrayDeque<Point> pending = new ArrayDeque<>();
    private double fedMin = Double.NaN;
    private double offsetL;

    /**
     * What holds while a volume is taken.
     *
     * @param hold whether to keep what was learned
     * @param knownLMin what is known to flow, so that drains still stand out of it
     */
    record Now(double noiseL, boolean pumpRuns, boolean hold, double knownLMin) {}

    /** Who reads slopes, who keeps the books, and who keeps each volume inside a phase. */
    record Readers(FillPhase fill, RampGlr glr, BedBook book, DrainWatch drains, FlowHistory history) {}

    PhaseFeed(Readers readers, RecentVolumes recent, double everyMin) {
        this.fill = readers.fill();
        this.glr = readers.glr();
        this.book = readers.book();
        this.drains = readers.drains();
        this.history = readers.history();
        this.recent = recent;
        this.everyMin = everyMin;
        this.siphons = fill.siphons();
    }

    /** Ends the phase: what waits is dropped. */
    void interrupt(Now now) {
        pending.clear();
        fill.ended(now.noiseL(), now.hold());
        glr.restart();
        history.restart();
        fedMin = Double.NaN;
    }

    /** The last volume: inside a fill phase, or one that shows a drain. */
    void take(Point p, Now now) {
        double lookBack = fill.lookBackMin(now.noiseL());
        Point earlier = recent.earlier(lookBack);
        if (earlier != null) {
            double minutes = p.tMin() - earlier.tMin();
            double rise = p.volumeL() - earlier.volumeL();
            fill.rough(rise / minutes);
            if (now.pumpRuns() && fill.draining(rise - now.knownLMin() * minutes, minutes, now.noiseL())) {
                drain(p, earlier, now);
                return;
            }
        }
        fill(p, lookBack, now);
    }

    /** A drain is seen at {@code p}, against {@code earlier}. */
    private void drain(Point p, Point earlier, Now now) {
        if (!drains.running()) {
            Point lowest = recent.lowest(earlier.tMin() - everyMin, fill.turnLMin());
            Point from = lowest == null ? earlier : lowest;
            while (!pending.isEmpty() && pending.getFirst().tMin() < from.tMin() - EDGE_SAMPLES * everyMin) {
                feed(pending.removeFirst(), now);
            }
            drains.begins(from);
            interrupt(now);
            book.drainBegins(from.tMin(), now.noiseL());
        }
        pending.clear();
        drains.goesOn(p.tMin());
    }

    /** When the level turned down: the later of what its height and its bend say. */
    private double ending(double lookBack, Now now) {
        Point highest = recent.highest(StrictMath.max(drains.startMin(), drains.endMin() - lookBack), fill.turnLMin());
        double end = highest == null ? drains.endMin() : highest.tMin();
        double bend = Bend.timeMin(recent.after(end - BESIDE_MIN), fill.fillLMin(), now.noiseL());
        return bend > end ? bend : end;
    }

    /** No drain is seen at {@code p}; drains are looked for over {@code lookBack} minutes. */
    private void fill(Point p, double lookBack, Now now) {
        if (!drains.running()) {
            pending.addLast(p);
        } else if (p.tMin() - drains.endMin() > StrictMath.max(SURELY_OVER_MIN, SAMPLES * everyMin)) {
            drainOver(lookBack, now);
        }
        double waits = siphons ? StrictMath.max(lookBack + SURELY_INSIDE_MIN, SAMPLES * everyMin) : 0;
        while (!pending.isEmpty() && p.tMin() - pending.getFirst().tMin() >= waits) {
            feed(pending.removeFirst(), now);
        }
    }

    /** All since the level turned is a fill phase. */
    private void drainOver(double lookBack, Now now) {
        double end = ending(lookBack, now);
        book.drainsOver(end);
        drains.over(end, now.hold());
        pending.addAll(recent.after(end + EDGE_SAMPLES * everyMin));
    }

    private void feed(Point p, Now now) {
        double slope = now.pumpRuns() ? fill.fillLMin() : 0;
        if (!Double.isNaN(fedMin) && fill.learned()) {
            offsetL += slope * (p.tMin() - fedMin);
        }
        fedMin = p.tMin();
        history.addBelowBrim(p.tMin(), p.volumeL(), now.noiseL());
        if (now.pumpRuns()) {
            fill.inside(p.tMin(), p.volumeL());
            if (fill.learned()) {
                book.filling(p.tMin(), p.volumeL(), -fill.fillLMin(), now.noiseL());
            }
        }
        if (fill.learned()) {
            glr.add(p.tMin(), p.volumeL() - offsetL, now.noiseL() * now.noiseL());
        }
    }
}
