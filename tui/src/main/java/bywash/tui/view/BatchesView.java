package bywash.tui.view;

import bywash.rules.chlorine.BatchStep;
import bywash.rules.chlorine.BatchView;
import bywash.rules.chlorine.BatchView.SafeAt;
import bywash.rules.chlorine.BatchView.Safety;
import bywash.rules.text.Names;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Every reserve's batch in words: whether its water may go in, and when it can be expected to. */
public final class BatchesView {
    private BatchesView() {}

    public static List<Passage> from(Frame frame) {
        List<Passage> out = new ArrayList<>();
        for (BatchView batch : frame.snapshot().care().batches()) {
            one(out, batch, frame);
        }
        if (out.isEmpty()) {
            out.add(Passage.plain("", "The site has no reserve; water from the mains goes straight in."));
        }
        return out;
    }

    private static void one(List<Passage> out, BatchView batch, Frame frame) {
        DisplayUnits units = new DisplayUnits(frame.snapshot().site().units());
        boolean safe = batch.safety() == Safety.CONFIRMED || batch.safety() == Safety.NO_DISINFECTANT;
        Tone tone = safe ? Tone.PLAIN : Tone.WARNING;
        out.add(new Passage(batch.vessel(), (safe ? "" : "! ") + batch.safety().word(), tone));
        out.add(Passage.plain("Known", batch.words() + "."));
        out.add(Passage.plain(
                "Holds",
                units.volume(batch.volume().likelyL())
                        + (batch.measured() ? " by its level probe" : ", not measured: no level is read")));
        out.add(Passage.plain(
                "Residual",
                number(batch.residual().likelyMgL()) + " mg/L likely, "
                        + number(batch.residual().lowMgL()) + " to "
                        + number(batch.residual().highMgL()) + "; loss "
                        + Words.number(batch.rate().likelyPerHour(), 3)
                        + " an hour (" + Words.number(batch.rate().lowPerHour(), 3) + " to "
                        + Words.number(batch.rate().highPerHour(), 3) + ")"));
        out.add(Passage.plain("Treated", treated(batch, frame)));
        out.add(Passage.plain("May go in", release(batch, frame)));
        out.add(Passage.plain("", ""));
    }

    private static String treated(BatchView batch, Frame frame) {
        String steps = batch.steps().stream().map(s -> step(s, frame)).collect(Collectors.joining("; "));
        return steps.isEmpty() ? "not yet: it only stands" : steps;
    }

    private static String step(BatchStep step, Frame frame) {
        String amount = Double.isNaN(step.amountG()) ? "" : " " + Words.number(step.amountG(), 1) + " g";
        return Names.words(step.treatment().word()) + amount + " " + clock(step.at(), frame);
    }

    /** When its water may go in, in words. */
    static String release(BatchView batch, Frame frame) {
        SafeAt safeAt = batch.safeAt();
        if (safeAt != null) {
            return "expected free of chlorine about " + or(safeAt.likely(), frame, "in more than 60 days")
                    + ", earliest " + clock(safeAt.earliest(), frame) + ", latest "
                    + or(safeAt.latest(), frame, "in more than 60 days") + "; then test before it goes in.";
        }
        return switch (batch.safety()) {
            case NO_DISINFECTANT, CONFIRMED -> "now.";
            case EXPECTED -> "after a total-chlorine test of zero.";
            case NEVER -> "never by standing: dose a chemical or filter by carbon, then test.";
            case WAITING, UNKNOWN -> "not known: test it, and enter each filling.";
        };
    }

    private static String or(@Nullable Instant at, Frame frame, String never) {
        return at == null ? never : clock(at, frame);
    }

    private static String clock(Instant at, Frame frame) {
        return Words.clock(at, frame.at(), frame.snapshot().site().timeZone());
    }

    private static String number(double mgL) {
        return Words.number(mgL, 2);
    }
}
