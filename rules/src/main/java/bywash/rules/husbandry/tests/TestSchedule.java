package bywash.rules.husbandry.tests;

import bywash.rules.event.OperatorEntry.WaterTest;
import bywash.rules.husbandry.bacteria.FishlessPlan;
import bywash.rules.recovery.Bacteria;
import bywash.rules.recovery.DueTest;
import bywash.rules.site.Stocking;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * The schedule of manual tests of the water in the loop. The routine is common practice, no source: ammonia, nitrite and pH
 * weekly, nitrate and alkalinity every two weeks. After an incident the recovery's schedule counts where it asks for a test
 * sooner; without fish ammonia and nitrite are asked for as often as the bacteria's plan needs them.
 */
public final class TestSchedule {
    private static final Duration DAY = Duration.ofDays(1);
    private static final Duration WEEK = Duration.ofDays(7);
    private static final Duration FORTNIGHT = Duration.ofDays(14);
    private static final List<String> ROUTINE = List.of("total-ammonia", "nitrite", "ph", "nitrate", "alkalinity");

    private TestSchedule() {}

    /** How often, and why. */
    private record Often(Duration every, String why) {}

    /**
     * What is due when, the soonest first.
     *
     * @param last the latest test of a quantity in the loop
     * @param recovery what the way back from an incident asks for; empty where there is none
     */
    public static List<TestDue> of(
            Instant now, Stocking stocking, Function<String, @Nullable WaterTest> last, List<DueTest> recovery) {
        List<TestDue> all = new ArrayList<>();
        for (String quantity : ROUTINE) {
            WaterTest test = last.apply(quantity);
            Often often = often(quantity, stocking, test);
            all.add(new TestDue(quantity, test, test == null ? now : test.at().plus(often.every()), often.why()));
        }
        for (DueTest asked : recovery) {
            TestDue routine = all.stream()
                    .filter(t -> t.quantity().equals(asked.quantity()))
                    .findFirst()
                    .orElse(null);
            if (routine == null || asked.dueAt().isBefore(routine.dueAt())) {
                all.remove(routine);
                all.add(new TestDue(
                        asked.quantity(),
                        last.apply(asked.quantity()),
                        asked.dueAt(),
                        asked.why() + ", after the incident"));
            }
        }
        all.sort(Comparator.comparing(TestDue::dueAt).thenComparing(TestDue::quantity));
        return all;
    }

    private static Often often(String quantity, Stocking stocking, @Nullable WaterTest test) {
        boolean nitrogen = quantity.equals("total-ammonia") || quantity.equals("nitrite");
        if (nitrogen && stocking == Stocking.FISHLESS) {
            long days = FishlessPlan.TEST_EVERY.toDays();
            return new Often(FishlessPlan.TEST_EVERY, "every " + days + " days while there are no fish");
        }
        if (nitrogen && test != null && test.value() > Bacteria.LIMIT_MG_L) {
            return new Often(DAY, "daily while it is above 1 mg/L");
        }
        return nitrogen || quantity.equals("ph") ? new Often(WEEK, "weekly") : new Often(FORTNIGHT, "every two weeks");
    }
}
