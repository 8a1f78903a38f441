package bywash.rules.detect;

import bywash.rules.detect.RampGlr.Candidate;
import bywash.rules.detect.RecentVolumes.Point;
import bywash.rules.detect.Stretch.Usual;
import java.time.Duration;
import org.jspecify.annotations.Nullable;

/**
 * All views on the volumes of one vessel: takes them sample by sample, tells fills from drains, and keeps slopes, means,
 * swings and the book of the beds. Decides nothing. Litres over minutes.
 */
final class LevelViews {
    /** With samples farther apart drains and fills blur; then slow means alone are heard. */
    private static final double RESOLVES_DRAINS_MIN = 0.5;

    private static final double LEARNED_WITH_BEDS_MIN = 30;
    private static final double LEARNED_MIN = 5;
    private static final double LATELY_MIN = 2;
    private static final int LATELY_SAMPLES = 4;

    private final double bedsL;
    private final double everyMin;
    private final SpikeGuard guard;
    private final FillPhase fill;
    private final RampGlr glr = new RampGlr(1.0, 0.5);
    private final SlowDrift slow;
    private final BedBook book;
    private final HourlyChange hour;
    private final RecentVolumes recent = new RecentVolumes();
    private final Swing swing = new Swing();
    private final FlowHistory history;
    private final DrainWatch drains;
    private final Overflow overflow;
    private final PhaseFeed feed;
    private final FlowEvidence evidence;
    private double firstMin = Double.NaN;
    private double lastMin = Double.NaN;
    private double volumeL = Double.NaN;

    /**
     * What is held to go on in the vessel while a volume is taken.
     *
     * @param moving whether water moves, found or declared, so that nothing is learned
     * @param calm whether it is known that none moves
     * @param knownLMin what a found flow brings or takes, so that drains still stand out of it
     */
    record Course(boolean pumpRuns, boolean moving, boolean calm, double knownLMin) {}

    /** @param brimL where it runs over, L */
    LevelViews(double startNoiseL, Hold hold, Duration every, boolean pumpTold, double brimL) {
        boolean siphons = hold.bedsL() > 0;
        this.bedsL = hold.bedsL();
        this.everyMin = every.toMillis() / 60_000.0;
        this.guard = new SpikeGuard(startNoiseL);
        this.fill = new FillPhase(siphons);
        this.slow = new SlowDrift(siphons);
        this.hour = new HourlyChange(siphons);
        this.drains = new DrainWatch(hold, pumpTold);
        this.book = new BedBook(siphons ? hold.beds() : 0);
        this.overflow = new Overflow(brimL);
        this.history = new FlowHistory(overflow);
        this.feed = new PhaseFeed(new PhaseFeed.Readers(fill, glr, book, drains, history), recent, everyMin);
        this.evidence = new FlowEvidence(glr, fill, book, siphons, everyMin <= RESOLVES_DRAINS_MIN);
    }

    boolean siphons() {
        return bedsL > 0;
    }

    /** Whether a volume at that time comes after so long a silence that the level may have done anything. */
    boolean gapBefore(double tMin) {
        return tMin - lastMin > gapMin();
    }

    private double gapMin() {
        return StrictMath.max(2, 3.5 * everyMin);
    }

    /** Nobody saw what the level did. */
    void gap(Course course) {
        guard.gap();
        book.loosenBeds();
        drains.forget();
        recent.clear();
        feed.interrupt(phaseNow(course));
    }

    private PhaseFeed.Now phaseNow(Course course) {
        return new PhaseFeed.Now(guard.noiseL(), course.pumpRuns(), course.moving(), course.knownLMin());
    }

    /** Hears a volume; what is known by it of the level, which may be a little older, or null where that is nothing new. */
    @Nullable
    Point hear(double tMin, double litres) {
        firstMin = Double.isNaN(firstMin) ? tMin : firstMin;
        if (tMin <= lastMin) {
            return null;
        }
        lastMin = tMin;
        if (!guard.add(tMin, litres)) {
            return null;
        }
        Point p = new Point(guard.tMin(), guard.volumeL());
        volumeL = p.volumeL();
        recent.add(p);
        if (siphons()) {
            swing.add(p.tMin(), p.volumeL());
        }
        return p;
    }

    /** What was heard, with the pump at a standstill and pipes empty: nothing but a flow moves it. */
    void takeStanding(Point p) {
        history.add(p.tMin(), p.volumeL());
    }

    /** What was heard goes to every view. */
    void take(Point p, Course course) {
        slow.add(p.tMin(), p.volumeL(), course.moving());
        hour.add(p.tMin(), p.volumeL(), course.calm());
        if (resolvesDrains() && fill.learned() && course.pumpRuns()) {
            drains.sample(p, recent, known(course.moving()));
        }
        feed.take(p, phaseNow(course));
    }

    private boolean resolvesDrains() {
        return siphons() && everyMin <= RESOLVES_DRAINS_MIN;
    }

    /** What drains are judged by; {@code hold} keeps what was learned of them. */
    private DrainWatch.Known known(boolean hold) {
        return new DrainWatch.Known(fill.fillLMin(), guard.noiseL(), slow.usualL(), hold);
    }

    /** Another balance begins: what moved so far is forgotten, what is usual is not. */
    void beginAnew(Course course) {
        hour.disturbed();
        feed.interrupt(phaseNow(course));
        glr.clear();
        book.loosenTotal();
        slow.clear();
        drains.forget();
    }

    /** Water is let in as planned from here on, or no more. */
    void planned(boolean running) {
        book.moving(running);
    }

    /** The pump stopped or started: another slope is usual, and beds drain or fill from another level. */
    void pumpTurned(Course course) {
        book.loosenBeds();
        beginAnew(course);
        history.clear();
        swing.clear();
    }

    /** What was learned of fills and drains is wrong, since it cried of a flow that never was. */
    void relearn() {
        fill.relearn();
        drains.wrong();
    }

    /** Whether enough was seen to judge slopes. */
    boolean learned(double nowMin) {
        double least = siphons() ? LEARNED_WITH_BEDS_MIN : LEARNED_MIN;
        return fill.learned() && guard.learned() && nowMin - firstMin >= least;
    }

    /** What no drain explains; null where drains may explain all. {@code hold} as in {@link Course#moving}. */
    DrainWatch.@Nullable Beyond beyondDrains(double nowMin, boolean hold) {
        double heardMin = StrictMath.min(nowMin, lastMin + gapMin()); // a drain does not go on while nobody listens
        return drains.beyond(heardMin, recent.sureL(), known(hold), evidence.hintsAtInflow());
    }

    /** The means that show a slow flow most clearly; null where none do. */
    @Nullable
    SlowWindow slowFlow() {
        return slow.speaks(window -> evidence.besideMeans(window, lastMin));
    }

    /** Minutes that no drain lasts for. */
    double surelyDrainedMin() {
        return drains.surelyOverMin();
    }

    /** What is usual for a flow to stand out of, with the pump running or not. */
    Usual usual(boolean pumpRuns, double spreadLMin) {
        return new Usual(pumpRuns ? fill.fillLMin() : 0, spreadLMin, guard.noiseL());
    }

    /** How fast it rose or fell between two times beyond its usual slope, L/min. */
    Slope slope(double fromMin, double toMin, boolean pumpRuns) {
        return history.slope(fromMin, toMin, usual(pumpRuns, FlowEvidence.STEADY_SD_L_MIN));
    }

    /** What moves since about {@code tMin}, whether convincing or not; null where that is not known. */
    @Nullable
    Candidate since(double tMin) {
        return glr.near(tMin);
    }

    /** How fast it rose or fell in the last few samples. */
    Slope latelyLMin() {
        return slope(lastMin - StrictMath.max(LATELY_MIN, LATELY_SAMPLES * everyMin), lastMin, true);
    }

    /** What of a ramp's rate is sure, as of {@link RampGlr#leastRateLMin}. */
    double leastRateLMin(Candidate c) {
        return glr.leastRateLMin(c);
    }

    /** Starts measuring a rate from this moment. */
    SlopeFit mark(double tMin) {
        return glr.mark(tMin);
    }

    /** Starts another in the place of one. */
    SlopeFit markAnew(SlopeFit old, double tMin) {
        glr.unmark(old);
        return glr.mark(tMin);
    }

    /** The least flow that would be found within so many minutes from now, L/min; NaN where none would be told. */
    double findsLMin(double minutes) {
        boolean resolved = !siphons() || resolvesDrains();
        return new Reach(
                        bedsL,
                        everyMin,
                        evidence.standingSdLMin(),
                        evidence.neededLogRatio(),
                        learned(lastMin),
                        resolved)
                .findsLMin(minutes, drains.slopesMin3(minutes), guard, fill, slow);
    }

    FlowEvidence evidence() {
        return evidence;
    }

    FlowHistory history() {
        return history;
    }

    FillPhase fill() {
        return fill;
    }

    SlowDrift slow() {
        return slow;
    }

    RecentVolumes recent() {
        return recent;
    }

    Swing swing() {
        return swing;
    }

    HourlyChange hour() {
        return hour;
    }

    /** Whether it stood at its overflow lately. */
    boolean ranOver(double nowMin) {
        return overflow.lately(nowMin);
    }

    /** Error of the learned slope itself, L/min. */
    double standingSdLMin() {
        return evidence.standingSdLMin();
    }

    /** The mean of the last few volumes, L; NaN without any. */
    double recentL() {
        return recent.meanL();
    }

    /** Noise of one volume, L, one standard deviation. */
    double noiseL() {
        return guard.noiseL();
    }

    double volumeL() {
        return volumeL;
    }

    double lastMin() {
        return lastMin;
    }
}
