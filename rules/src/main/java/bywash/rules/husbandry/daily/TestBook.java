package bywash.rules.husbandry.daily;

import bywash.rules.event.OperatorEntry.WaterTest;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Manual tests of the water in the loop, in order of entry. */
public final class TestBook {
    private static final int MOST = 5000;

    private final Set<String> reserves;
    private final List<WaterTest> tests = new ArrayList<>();
    private @Nullable List<WaterTest> all = List.of();

    /** @param reserves vessels whose water is not the loop's */
    public TestBook(Set<String> reserves) {
        this.reserves = Set.copyOf(reserves);
    }

    public void book(WaterTest test) {
        tests.add(test);
        all = null;
        if (tests.size() > MOST) {
            tests.remove(0);
        }
    }

    /** Asked for each frame; copied only when a test was added. */
    public List<WaterTest> all() {
        List<WaterTest> known = all;
        if (known == null) {
            known = List.copyOf(tests);
            all = known;
        }
        return known;
    }

    /** Tests of one quantity in the loop, oldest first. */
    public List<WaterTest> of(String quantity) {
        return tests.stream()
                .filter(t -> t.quantity().equals(quantity) && !reserves.contains(t.vessel()))
                .toList();
    }

    /** The latest test of a quantity in the loop. */
    public @Nullable WaterTest latest(String quantity) {
        for (int i = tests.size() - 1; i >= 0; i--) {
            WaterTest test = tests.get(i);
            if (test.quantity().equals(quantity) && !reserves.contains(test.vessel())) {
                return test;
            }
        }
        return null;
    }
}
