package bywash.tui.bench;

import org.junit.jupiter.api.Test;

/** The table of {@link VolumeBenchmark} as DEVELOPERS.md shows it; half a minute. */
final class VolumeTableBenchmark {
    @Test
    void table() {
        VolumeBenchmark.main(new String[] {"1501", "40"});
    }
}
