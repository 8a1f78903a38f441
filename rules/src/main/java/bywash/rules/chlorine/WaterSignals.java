package bywash.rules.chlorine;

import bywash.rules.event.Reading;
import bywash.rules.site.Probe;
import bywash.rules.site.Quantity;
import bywash.rules.site.Site;
import bywash.rules.site.VesselRole;
import bywash.rules.water.PhElectrode;
import bywash.rules.water.ReferenceElectrode;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * Oxidation potential, pH and temperature of the system as evidence: one probe of each, the fish tank's first. The
 * potential is brought to the usual pH and temperature. Theory lets it fall 59 mV a pH at 25 Cel (one proton an
 * electron) and rise 1 mV a Cel against a silver chloride reference; measured slopes of natural waters lie anywhere
 * between none and that, so half of it is taken out and half of it counts as error.
 */
public final class WaterSignals {
    private static final double ORP_TAU_S = 6 * 3600;
    private static final double KIND_TAU_S = 3600;
    private static final double JUMP_MV = 20;
    private static final Duration JUMP_WITHIN = Duration.ofSeconds(60);

    /** A jump is forgotten after so long, or when the potential is back. */
    private static final Duration JUMP_HOLDS = Duration.ofHours(6);

    /** Whether a probe can be heard. */
    public enum Hearing {
        NO_PROBE,
        SILENT,
        STUCK,
        LEARNING,
        JUMPED,
        GOOD
    }

    private final @Nullable Probe orpProbe;
    private final @Nullable Probe phProbe;
    private final @Nullable Probe temperatureProbe;
    private final SignalBaseline orp;
    private final SignalBaseline ph;
    private final SignalBaseline temperature;
    private final SignalBaseline phForOrp;
    private final SignalBaseline temperatureForOrp;
    private final Set<String> stuck = new TreeSet<>();
    private double lastMv = Double.NaN;
    private @Nullable Instant lastMvAt;
    private double correctionMv;
    private double jumpMv;
    private @Nullable Instant jumpedAt;
    private @Nullable Instant highSince;

    public WaterSignals(Site site) {
        this.orpProbe = find(site, Quantity.ORP);
        this.phProbe = find(site, Quantity.PH);
        this.temperatureProbe = find(site, Quantity.TEMPERATURE);
        this.orp = new SignalBaseline(ORP_TAU_S, 2, site.timeZone());
        this.ph = new SignalBaseline(KIND_TAU_S, 0.02, site.timeZone());
        this.temperature = new SignalBaseline(KIND_TAU_S, 0.1, site.timeZone());
        this.phForOrp = new SignalBaseline(ORP_TAU_S, 0.02, site.timeZone());
        this.temperatureForOrp = new SignalBaseline(ORP_TAU_S, 0.1, site.timeZone());
    }

    private static @Nullable Probe find(Site site, Quantity quantity) {
        return site.probes().stream()
                .filter(p -> p.quantity() == quantity && role(site, p) != VesselRole.RESERVE)
                .min(Comparator.comparing(p -> role(site, p)))
                .orElse(null);
    }

    private static VesselRole role(Site site, Probe probe) {
        return site.vessel(probe.vessel()).map(v -> v.role()).orElse(VesselRole.RESERVE);
    }

    /** A reading of any probe; those of no interest are passed over. */
    public void reading(Reading reading, boolean hold) {
        if (is(phProbe, reading)) {
            ph.add(reading.at(), reading.value(), hold);
            phForOrp.add(reading.at(), reading.value(), hold);
        } else if (is(temperatureProbe, reading)) {
            temperature.add(reading.at(), reading.value(), hold);
            temperatureForOrp.add(reading.at(), reading.value(), hold);
        } else if (is(orpProbe, reading)) {
            potential(reading, hold);
        }
    }

    private static boolean is(@Nullable Probe probe, Reading reading) {
        return probe != null && probe.id().equals(reading.probe());
    }

    private void potential(Reading reading, boolean hold) {
        Instant before = lastMvAt;
        if (before != null && !reading.at().isAfter(before.plus(JUMP_WITHIN))) {
            double step = reading.value() - lastMv;
            if (StrictMath.abs(step) > StrictMath.max(JUMP_MV, 8 * orp.spread())) {
                jumpMv = step;
                jumpedAt = reading.at();
            }
        }
        lastMv = reading.value();
        lastMvAt = reading.at();
        correctionMv = correction();
        boolean jumped = jumped(reading.at());
        orp.add(reading.at(), reading.value() + 0.5 * correctionMv, hold || jumped || riseSigmas() > 4);
        if (!(riseSigmas() > 3)) {
            highSince = null;
        } else if (highSince == null) {
            highSince = reading.at();
        }
    }

    /** What theory adds to bring the potential to the usual pH and temperature, mV. */
    private double correction() {
        if (!phForOrp.learned()) {
            return 0;
        }
        double usualC = temperatureForOrp.learned() ? temperatureForOrp.usual() : 25;
        double nowC = temperatureForOrp.learned() ? usualC + temperatureForOrp.rise() : 25;
        double byPh = PhElectrode.idealSlopeMv(clamp(nowC, 0, 60)) * phForOrp.rise();
        return byPh + reference(nowC) - reference(usualC);
    }

    private static double reference(double temperatureC) {
        return ReferenceElectrode.KCL_3_5_MOLAR.potentialMv(clamp(temperatureC, 10, 35));
    }

    private static double clamp(double value, double low, double high) {
        return StrictMath.max(low, StrictMath.min(high, value));
    }

    /** Whether a probe repeats one value; told at each tick. */
    public void stuck(String probe, boolean is) {
        if (is) {
            stuck.add(probe);
        } else {
            stuck.remove(probe);
        }
    }

    Hearing orpHearing(Instant at) {
        Hearing plain = hearing(orpProbe, orp, at);
        return plain == Hearing.GOOD && jumped(at) ? Hearing.JUMPED : plain;
    }

    Hearing phHearing(Instant at) {
        return hearing(phProbe, ph, at);
    }

    Hearing temperatureHearing(Instant at) {
        return hearing(temperatureProbe, temperature, at);
    }

    private Hearing hearing(@Nullable Probe probe, SignalBaseline baseline, Instant at) {
        if (probe == null) {
            return Hearing.NO_PROBE;
        }
        Instant last = baseline.last();
        if (last == null || at.isAfter(last.plus(probe.silence()))) {
            return Hearing.SILENT;
        }
        if (stuck.contains(probe.id())) {
            return Hearing.STUCK;
        }
        return baseline.learned() ? Hearing.GOOD : Hearing.LEARNING;
    }

    private boolean jumped(Instant at) {
        Instant when = jumpedAt;
        boolean over = when == null || at.isAfter(when.plus(JUMP_HOLDS));
        boolean back = when != null && at.isAfter(when.plusSeconds(180)) && StrictMath.abs(riseSigmas()) < 3;
        if (over || back) {
            jumpedAt = null;
        }
        return jumpedAt != null;
    }

    /** Size of the last jump, mV. */
    double jumpMv() {
        return jumpMv;
    }

    double riseMv() {
        return orp.rise();
    }

    double riseSigmas() {
        return orp.riseSigmas();
    }

    /** One standard error of the rise: the usual spread and half the correction. */
    double riseErrorMv() {
        double corrected = 0.5 * correctionMv;
        return StrictMath.sqrt(orp.spread() * orp.spread() + corrected * corrected);
    }

    /** Since when the rise has been above three sigmas; null when it is not. */
    @Nullable
    Instant highSince() {
        return highSince;
    }

    SignalBaseline ph() {
        return ph;
    }

    SignalBaseline temperature() {
        return temperature;
    }

    boolean orpFitted() {
        return orpProbe != null;
    }
}
