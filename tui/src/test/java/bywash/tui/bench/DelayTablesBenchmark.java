package bywash.tui.bench;

import org.junit.jupiter.api.Test;

/** The tables of {@link DelayBenchmark} as DEVELOPERS.md shows them; minutes of processor time. */
final class DelayTablesBenchmark {
    @Test
    void tables() {
        DelayBenchmark.main(new String[] {"101", "20", "2"});
    }
}
