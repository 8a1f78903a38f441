package bywash.tui.view;

import bywash.rules.chlorine.BatchView;
import bywash.rules.engine.VesselStatus;
import bywash.rules.event.OperatorEntry.TopUpStart;
import bywash.rules.husbandry.stock.SpeciesLimits;
import bywash.rules.site.Disinfectant;
import bywash.rules.site.Site;
import bywash.rules.vessel.VesselShape;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What is to be said about a top-up as typed.
 *
 * @param volumeL NaN while it is no number
 * @param minutes NaN while it is no number
 * @param problems what must be put right before it can be declared
 * @param warnings what must be read before it is declared
 */
public record TopUpCheck(
        TopUpDraft draft, double volumeL, double minutes, List<String> problems, List<String> warnings) {
    private static final double LONGEST_MIN = 24 * 60;

    public TopUpCheck {
        problems = List.copyOf(problems);
        warnings = List.copyOf(warnings);
    }

    public boolean ready() {
        return problems.isEmpty();
    }

    public Duration duration() {
        return Duration.ofSeconds(Math.round(minutes * 60));
    }

    /** The same as a form takes it. */
    public FormCheck form(Frame frame) {
        return ready()
                ? new FormCheck(
                        problems,
                        warnings,
                        List.of(new TopUpStart(frame.now(), draft.vessel(), draft.source(), volumeL, duration())),
                        "Top-up declared. Open the valve now.")
                : FormCheck.open(problems, warnings);
    }

    public static TopUpCheck from(Frame frame, TopUpDraft draft) {
        DisplayUnits units = new DisplayUnits(frame.snapshot().site().units());
        double volumeL = units.litres(number(draft.volume()));
        double minutes = number(draft.minutes());
        List<String> problems = new ArrayList<>();
        List<String> warnings = new ArrayList<>();
        if (draft.vessel().isEmpty()) {
            problems.add("The site has no vessel to top up.");
        }
        if (!(volumeL > 0)) {
            problems.add("Volume: type a number above 0, in " + units.volumeUnit() + ".");
        } else {
            room(frame, draft, volumeL, units, problems);
        }
        if (!(minutes > 0 && minutes <= LONGEST_MIN)) {
            problems.add("Duration: type minutes, above 0 and at most 1440.");
        }
        holds(frame, draft, volumeL, units, warnings);
        source(frame, draft, volumeL, warnings);
        return new TopUpCheck(draft, volumeL, minutes, problems, warnings);
    }

    private static void room(Frame frame, TopUpDraft draft, double volumeL, DisplayUnits units, List<String> problems) {
        for (VesselStatus status : frame.snapshot().vessels()) {
            VesselShape shape = status.vessel().shape();
            boolean known = shape != null && Double.isFinite(status.volumeL());
            if (shape != null && known && status.vessel().id().equals(draft.vessel())) {
                double full = shape.volumeL(Math.min(status.vessel().overflowMm(), shape.heightMm()));
                double room = Math.max(0, full - status.volumeL());
                if (volumeL > room) {
                    problems.add("Volume: only " + units.volume(room) + " fit in " + draft.vessel()
                            + " before it overflows.");
                }
            }
        }
    }

    /** What the source holds is said, not forbidden: it may be filled while it runs. */
    private static void holds(
            Frame frame, TopUpDraft draft, double volumeL, DisplayUnits units, List<String> warnings) {
        for (VesselStatus status : frame.snapshot().vessels()) {
            if (status.vessel().id().equals(draft.source()) && volumeL > status.volumeL()) {
                warnings.add(draft.source() + " holds only " + units.volume(status.volumeL()) + ".");
            }
        }
    }

    private static void source(Frame frame, TopUpDraft draft, double volumeL, List<String> warnings) {
        Site site = frame.snapshot().site();
        boolean harmless = site.mains().disinfectant() == Disinfectant.NONE;
        if (harmless || frame.safeSources().contains(draft.source())) {
            return;
        }
        BatchView batch = frame.snapshot().care().batches().stream()
                .filter(b -> b.vessel().equals(draft.source()))
                .findFirst()
                .orElse(null);
        double mgL =
                batch == null ? site.mains().residualMgL() : batch.residual().highMgL();
        warnings.add(words(site, draft, batch, frame));
        double ugL = mgL * 1000 * volumeL / frame.snapshot().systemVolume().lowL();
        if (ugL > 0) {
            SpeciesLimits limits = ChlorineView.limits(frame);
            warnings.add("At worst, this volume adds up to " + Words.number(ugL, 0) + " ug/L; above "
                    + Words.number(limits.acuteUgL(), 0) + " ug/L harms "
                    + (limits.ownChlorine() ? "the species here (" + limits.chlorineOf() + ")" : "fish (EPA 1985)")
                    + ". Test with a DPD kit first.");
        }
    }

    private static String words(Site site, TopUpDraft draft, @Nullable BatchView batch, Frame frame) {
        if (draft.source().equals(TopUpDraft.MAINS)) {
            return "Mains water carries " + site.mains().disinfectant().word() + ", about "
                    + Words.number(site.mains().residualMgL(), 1) + " mg/L.";
        }
        return batch == null
                ? "Water of " + draft.source() + " is not known to be free of chlorine: no test since it was filled."
                : "Water of " + draft.source() + " is not known to be free of chlorine: " + batch.words()
                        + ". It may go in " + BatchesView.release(batch, frame);
    }

    private static double number(String typed) {
        try {
            return typed.isBlank() ? Double.NaN : Double.parseDouble(typed);
        } catch (NumberFormatException e) {
            return Double.NaN;
        }
    }
}
