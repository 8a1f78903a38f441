package bywash.rules.detect;

import bywash.rules.detect.FlowFinding.Verdict;
import bywash.rules.event.OperatorEntry;
import bywash.rules.site.Device;
import bywash.rules.site.Disinfectant;
import bywash.rules.site.Mains;
import bywash.rules.site.Probe;
import bywash.rules.site.Quantity;
import bywash.rules.site.Site;
import bywash.rules.site.Stocking;
import bywash.rules.site.Units;
import bywash.rules.site.Vessel;
import bywash.rules.site.VesselRole;
import bywash.rules.vessel.Box;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.SplittableRandom;

/** A sump and a reserve of a square metre each, without siphons, driven minute by minute. */
final class SmallSite {
    static final Instant START = Instant.parse("2026-05-04T00:00:00Z");

    final WaterBalance balance;
    private final SplittableRandom random = new SplittableRandom(5);
    double sumpL = 400;
    double reserveL = 600;
    double sumpFlowLMin;
    double reserveFlowLMin;
    boolean sumpSilent;
    boolean twiceAndLate;
    private long second;

    SmallSite(boolean pumpTold) {
        Box box = new Box(1000, 1000, 900);
        List<Vessel> vessels = List.of(
                new Vessel("sump", VesselRole.SUMP, box, 800, 800, null),
                new Vessel("reserve", VesselRole.RESERVE, box, 800, 800, "sump"),
                new Vessel("fish-tank", VesselRole.FISH_TANK, null, 1500, Double.NaN, null));
        Duration every = Duration.ofSeconds(10);
        List<Probe> probes = new ArrayList<>(List.of(
                new Probe("sump-level", "sump", Quantity.LEVEL, null, every),
                new Probe("reserve-level", "reserve", Quantity.LEVEL, null, every)));
        if (pumpTold) {
            probes.add(new Probe("pump", "sump", Quantity.STATE, Device.PUMP, every));
        }
        Mains mains = new Mains(Disinfectant.CHLORINE, 0.9, 7.9, 120, 11);
        ZoneId utc = ZoneId.of("UTC");
        balance = new WaterBalance(
                new Site("Test", "test", utc, 85, Stocking.FISH, Units.METRIC, mains, vessels, probes, List.of()));
    }

    Instant now() {
        return START.plusSeconds(second);
    }

    /** Lets minutes pass. */
    SmallSite run(double minutes) {
        long until = second + StrictMath.round(minutes * 60);
        while (second < until) {
            second++;
            sumpL += sumpFlowLMin / 60;
            reserveL += reserveFlowLMin / 60;
            if (second % 10 == 0) {
                sample("sump", sumpL, sumpSilent);
                sample("reserve", reserveL, false);
            }
            if (second % 5 == 0) {
                balance.tick(now());
            }
        }
        return this;
    }

    private void sample(String vessel, double litres, boolean silent) {
        double u = 1 - random.nextDouble();
        double noise =
                StrictMath.sqrt(-2 * StrictMath.log(u)) * StrictMath.cos(2 * StrictMath.PI * random.nextDouble());
        if (silent) {
            return;
        }
        balance.level(vessel, now(), litres + 1.5 * noise);
        if (twiceAndLate) {
            balance.level(vessel, now(), litres + 1.5 * noise);
            balance.level(vessel, now().minusSeconds(7), litres - 200);
        }
    }

    /** Runs until the verdict or for so many minutes; returns the minutes it took. */
    double until(String vessel, Verdict verdict, double mostMin) {
        long from = second;
        while (second - from < mostMin * 60 && finding(vessel).verdict() != verdict) {
            run(1.0 / 12);
        }
        return finding(vessel).verdict() == verdict ? (second - from) / 60.0 : Double.POSITIVE_INFINITY;
    }

    FlowFinding finding(String vessel) {
        return Objects.requireNonNull(balance.finding(vessel));
    }

    void topUp(double litres, double minutes) {
        topUpFrom("reserve", litres, minutes);
    }

    void topUpFrom(String source, double litres, double minutes) {
        Duration length = Duration.ofSeconds(StrictMath.round(minutes * 60));
        balance.topUpStarted(new OperatorEntry.TopUpStart(now(), "sump", source, litres, length));
    }

    void endTopUp() {
        balance.topUpEnded(new OperatorEntry.TopUpEnd(now(), "sump"));
    }

    /** Water runs from the reserve into the sump. */
    void release(double rateLMin) {
        sumpFlowLMin = rateLMin;
        reserveFlowLMin = -rateLMin;
    }
}
