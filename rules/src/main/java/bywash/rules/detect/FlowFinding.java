package bywash.rules.detect;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * What the balance of one vessel says now. Rates are L/min, volumes L, errors one standard error.
 *
 * @param vessel id
 * @param verdict the decision
 * @param rateLMin positive into the vessel, negative out of it
 * @param volumeL since {@code since}, positive in
 * @param declaredL how much of {@code volumeL} was declared, of a release that ran past its volume; 0 where all or none
 *     of it was
 * @param since estimated onset; null while quiet
 * @param until when it ended, told once at its end; null while it runs
 * @param source words for where it comes from: a reserve's id, {@code outside} or {@code unknown}
 * @param part what of it a reserve's own level shows to have come from there, where not all may have; null where nothing does
 * @param overflowAt when the vessel overflows at this rate; null when it does not, or when a declared release ends sooner
 * @param dryAt when it runs dry at this rate; null when it does not
 * @param why evidence in words
 */
public record FlowFinding(
        String vessel,
        Verdict verdict,
        double rateLMin,
        double rateSeLMin,
        double volumeL,
        double volumeSeL,
        double declaredL,
        @Nullable Instant since,
        @Nullable Instant until,
        String source,
        @Nullable Part part,
        @Nullable Instant overflowAt,
        @Nullable Instant dryAt,
        String why) {

    /**
     * What a reserve has lost while a flow ran.
     *
     * @param litres positive
     * @param se one standard error, L
     * @param until when it stopped losing; null while it does
     */
    public record Part(
            String reserve,
            double litres,
            double se,
            @Nullable Instant until) {}

    /** Of water that still runs, or of none, all or nothing of it declared. */
    public FlowFinding(
            String vessel,
            Verdict verdict,
            double rateLMin,
            double rateSeLMin,
            double volumeL,
            double volumeSeL,
            @Nullable Instant since,
            String source,
            @Nullable Instant overflowAt,
            @Nullable Instant dryAt,
            String why) {
        this(
                vessel,
                verdict,
                rateLMin,
                rateSeLMin,
                volumeL,
                volumeSeL,
                0,
                since,
                null,
                source,
                null,
                overflowAt,
                dryAt,
                why);
    }

    /** The same, with its evidence in words. */
    FlowFinding because(String words) {
        return new FlowFinding(
                vessel,
                verdict,
                rateLMin,
                rateSeLMin,
                volumeL,
                volumeSeL,
                declaredL,
                since,
                until,
                source,
                part,
                overflowAt,
                dryAt,
                words);
    }

    /** Litres moved either way, as a range of two standard errors. */
    public Spread moved() {
        return Spread.of(volumeL, volumeSeL);
    }

    /** Whether more than was declared has come of a release. */
    public boolean ranOver() {
        return declaredL != 0;
    }

    /** Litres beyond what was declared, either way, as a range of two standard errors. */
    public Spread beyond() {
        return Spread.of(StrictMath.max(0, StrictMath.abs(volumeL) - StrictMath.abs(declaredL)), volumeSeL);
    }

    /** The decision. */
    public enum Verdict {
        /** Not enough readings yet to tell. */
        LEARNING,
        QUIET,
        /** Water is coming in as declared. */
        PLANNED,
        UNPLANNED_INFLOW,
        UNPLANNED_LOSS,
        /** Still flowing after a top-up was ended, or past its volume or time. */
        LINE_NOT_SHUT,
        /** The pump has stopped and pipes drain back: a bounded rise, no water enters. */
        DRAIN_DOWN
    }
}
