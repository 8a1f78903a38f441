package bywash.tui.bench.chlorine;

import static org.junit.jupiter.api.Assertions.assertEquals;

import bywash.rules.alarm.AlarmKind;
import bywash.samples.simulation.Chores;
import bywash.samples.simulation.SiteModel;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Thirty quiet days with siphons, daily top-ups, weekly fillings and pump stops: no cry of chlorine. Prints the counts. */
@Tag("slow")
class QuietDays {
    private static final int DAYS = 30;

    @Test
    void cryNoChlorine() {
        long risks = 0;
        for (long seed = 1; seed <= 2; seed++) {
            long start = System.nanoTime();
            Trial trial = new Trial(
                            "chlorine, residual: 0.9",
                            Chores.quiet(SiteModel.larkfield(), DAYS),
                            DAYS * 1440,
                            seed,
                            OrpResponse.Fault.NONE,
                            0)
                    .play();
            double seconds = (System.nanoTime() - start) / 1e9;
            risks += trial.count(AlarmKind.CHLORINE_RISK);
            System.out.printf(
                    "seed %d: %d quiet days: chlorine-risk %d, orp-rise %d, unplanned-inflow %d, unsafe-release %d;"
                            + " %.0f minutes of %.0f inside; %.0f s%n",
                    seed,
                    DAYS,
                    trial.count(AlarmKind.CHLORINE_RISK),
                    trial.count(AlarmKind.ORP_RISE),
                    trial.count(AlarmKind.UNPLANNED_INFLOW),
                    trial.count(AlarmKind.UNSAFE_RELEASE),
                    (double) trial.minutes().stream()
                            .filter(Trial.Minute::inside)
                            .count(),
                    (double) trial.minutes().size(),
                    seconds);
        }
        assertEquals(0, risks);
    }
}
