package bywash.tui.view;

import bywash.rules.detect.BalanceLine;
import bywash.rules.detect.FlowFinding;
import bywash.rules.engine.VesselStatus;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The water balance in words: what each vessel and all together hold, what changed, and what of it is unexplained. */
public final class BalanceView {
    private static final double LOUD_SES = 3;

    private BalanceView() {}

    public static List<Passage> from(Frame frame) {
        List<Passage> out = new ArrayList<>();
        for (BalanceLine line : frame.snapshot().balance()) {
            one(out, line, frame);
            out.add(Passage.plain("", ""));
        }
        if (out.isEmpty()) {
            out.add(Passage.plain("", "No vessel has a level probe that has spoken yet: no balance can be kept."));
        }
        TopUpProgress topUp = TopUpProgress.from(frame);
        out.add(Passage.plain("Top-up", topUp.what()));
        if (!topUp.volume().isEmpty()) {
            out.add(Passage.plain("", topUp.volume() + "; " + topUp.time()));
        }
        if (!topUp.shut().isEmpty()) {
            out.add(Passage.plain("Line", topUp.shut()));
        }
        return out;
    }

    private static void one(List<Passage> out, BalanceLine line, Frame frame) {
        DisplayUnits units = new DisplayUnits(frame.snapshot().site().units());
        boolean system = line.subject().equals(BalanceLine.SYSTEM);
        String holds = system ? "all level probes together: " : "holds ";
        out.add(Passage.plain(line.subject(), holds + units.volume(line.litres()) + (system ? others(frame) : "")));
        FlowFinding flow = system ? null : flow(line.subject(), frame);
        Passage moved = system ? null : MovedWords.of(line, flow, frame);
        boolean moving =
                system ? frame.snapshot().balance().stream().anyMatch(l -> moves(l, frame)) : moves(line, frame);
        if (moved != null) {
            out.add(moved);
        }
        if (!moving) {
            out.add(Passage.plain("Last hour", change(line, units)));
        }
        out.add(
                planned(system, line, frame)
                        ? Passage.plain("Balance", TopUpProgress.balance(frame))
                        : unexplained(line, moving, units));
        if (flow != null && !flow.why().isEmpty()) {
            out.add(Passage.plain("Now", UsWords.water(flow.why(), frame)));
        }
        if (!system) {
            out.add(Passage.plain("Finds", finds(line, units)));
        }
    }

    /** Whether water comes as declared just now, here or, for all together, anywhere. */
    private static boolean planned(boolean system, BalanceLine line, Frame frame) {
        return frame.snapshot().balance().stream()
                .filter(l -> system || l.subject().equals(line.subject()))
                .anyMatch(l -> {
                    FlowFinding flow = flow(l.subject(), frame);
                    return flow != null && flow.verdict() == FlowFinding.Verdict.PLANNED && l.moved() == null;
                });
    }

    /** Whether water has lately moved, so that the hour's means, which lag behind, are no figure to show beside it. */
    private static boolean moves(BalanceLine line, Frame frame) {
        FlowFinding flow = flow(line.subject(), frame);
        boolean declared = flow != null
                && (flow.verdict() == FlowFinding.Verdict.PLANNED
                        || flow.verdict() == FlowFinding.Verdict.LINE_NOT_SHUT);
        return line.moved() != null || declared;
    }

    /** The last hour of a vessel and of all together in a sentence; empty where no balance is kept. */
    public static String words(String subject, Frame frame) {
        DisplayUnits units = new DisplayUnits(frame.snapshot().site().units());
        List<BalanceLine> lines = frame.snapshot().balance();
        BalanceLine own = lines.stream()
                .filter(l -> l.subject().equals(subject) && !l.subject().equals(BalanceLine.SYSTEM))
                .findFirst()
                .orElse(null);
        if (own == null) {
            return "";
        }
        Passage moved = MovedWords.of(own, flow(subject, frame), frame);
        String beyond = moved == null ? "Unexplained" : "Unexplained beyond that";
        String rest = lines.stream()
                .filter(l -> l.subject().equals(subject) || l.subject().equals(BalanceLine.SYSTEM))
                .filter(l -> !Double.isNaN(l.unexplainedL()) && !l.ranOver())
                .filter(l -> moved == null || !Double.isNaN(l.seL()))
                .map(l -> l.subject() + " " + units.change(l.unexplainedL())
                        + (Double.isNaN(l.seL()) ? "" : " +/- " + units.smallVolume(l.seL())))
                .collect(Collectors.collectingAndThen(
                        Collectors.joining(", "), w -> w.isEmpty() ? w : beyond + " in the last hour: " + w + "."));
        return moved == null ? rest : (moved.text() + ". " + rest).strip();
    }

    private static String others(Frame frame) {
        double litres = frame.snapshot().vessels().stream()
                .filter(v -> frame.snapshot().balance().stream()
                        .noneMatch(l -> l.subject().equals(v.vessel().id())))
                .mapToDouble(v -> v.vessel().volumeL())
                .sum();
        DisplayUnits units = new DisplayUnits(frame.snapshot().site().units());
        return litres > 0 ? "; vessels without one hold up to " + units.volume(litres) : "";
    }

    private static @Nullable FlowFinding flow(String vessel, Frame frame) {
        return frame.snapshot().vessels().stream()
                .filter(v -> v.vessel().id().equals(vessel))
                .map(VesselStatus::flow)
                .findFirst()
                .orElse(null);
    }

    private static String change(BalanceLine line, DisplayUnits units) {
        if (Double.isNaN(line.changeL())) {
            return "not known yet: an hour of levels is needed";
        }
        return units.change(line.changeL()) + "; declared " + units.change(line.declaredL()) + ", usual here "
                + units.change(line.usualL());
    }

    private static Passage unexplained(BalanceLine line, boolean moving, DisplayUnits units) {
        double litres = line.unexplainedL();
        String beyond = moving ? " beyond that" : "";
        if (Double.isNaN(litres)) {
            return Passage.plain("Balance", "not known yet");
        }
        if (line.ranOver()) {
            return new Passage(
                    "Balance",
                    "! not judged: the water stood at the overflow, and what ran over shows in no level",
                    Tone.WARNING);
        }
        if (moving && Double.isNaN(line.seL())) {
            return Passage.plain("Balance", "the rest is not judged, its error is not learned yet");
        }
        if (Double.isNaN(line.seL())) {
            return Passage.plain(
                    "Balance", units.change(litres) + " unexplained" + beyond + ", its error is not learned yet");
        }
        boolean loud = Math.abs(litres) > LOUD_SES * line.seL();
        String judged = loud ? ": more than chance" : ": within its error";
        String text = units.change(litres) + " unexplained" + beyond + ", +/- " + units.smallVolume(line.seL())
                + " (standard error)" + judged;
        return new Passage("Balance", (loud ? "! " : "") + text, loud ? Tone.WARNING : Tone.PLAIN);
    }

    private static String finds(BalanceLine line, DisplayUnits units) {
        return Double.isNaN(line.findsLMin())
                ? "nothing yet: too few levels"
                : "a flow of " + units.flow(line.findsLMin()) + " or more within half an hour, faster ones sooner";
    }
}
