package bywash.tui.watch;

import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.site.SiteFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The whole watch, loop, rules and journal, through an hour and more of everything that goes wrong: lost brokers, lines that
 * fall silent without a word, old values sent again, doubled, swapped, late, hostile and spoilt messages, floods, clock steps,
 * slow and full disks, stops, kills at any moment, lost power. The seed is in the test's name; another number of them with
 * {@code -Dsimulation.seeds=1000}, from another first one with {@code -Dsimulation.first=500}.
 */
class FaultSimulationTest {
    private Path dir;

    static LongStream seeds() {
        long first = Long.getLong("simulation.first", 1);
        return LongStream.range(first, first + Integer.getInteger("simulation.seeds", 25));
    }

    /** In memory where the system has a place for it: a sync then costs nothing, and what it must do is modelled. */
    @BeforeEach
    void folder() throws IOException {
        Path memory = Path.of("/dev/shm");
        dir = Files.isWritable(memory)
                ? Files.createTempDirectory(memory, "bywash-")
                : Files.createTempDirectory("bywash-");
    }

    @AfterEach
    void remove() throws IOException {
        try (Stream<Path> all = Files.walk(dir)) {
            List<Path> deepestFirst = all.sorted(Comparator.reverseOrder()).toList();
            for (Path path : deepestFirst) {
                Files.delete(path);
            }
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    @Execution(ExecutionMode.CONCURRENT)
    void nothingShownIsLostAndNoSilenceIsReadAsAllWell(long seed) throws Exception {
        try {
            run(seed, Sabotage.NONE);
        } catch (AssertionError e) {
            throw new AssertionError("seed " + seed + ": " + e.getMessage(), e);
        }
    }

    private long run(long seed, Sabotage sabotage) throws Exception {
        SiteFile site = Larkfield.site();
        return new FaultSimulation(seed, site, Files.createTempDirectory(dir, "seed"), sabotage)
                .run()
                .holds();
    }

    /** Faults of ours made on purpose are found, each with its own complaint, within a few seeds. */
    @ParameterizedTest
    @EnumSource(value = Sabotage.class, mode = EnumSource.Mode.EXCLUDE, names = "NONE")
    void findsAFaultMadeOnPurpose(Sabotage sabotage) throws Exception {
        String complaint = "";
        for (long seed = 1; seed <= 40 && complaint.isEmpty(); seed++) {
            try {
                run(seed, sabotage);
            } catch (AssertionError e) {
                complaint = String.valueOf(e.getMessage());
            }
        }
        assertTrue(complaint.startsWith(sabotage.complaint), complaint);
    }
}
