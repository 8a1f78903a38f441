package bywash.bench.micro;

import bywash.bench.Budget;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.options.Options;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;
import org.openjdk.jmh.runner.options.VerboseMode;

/** Runs {@link HotPaths} under JMH, in a virtual machine of its own: microseconds a call with the error of the mean. */
class HotPathsBenchmark {
    @Test
    void microsecondsACall() throws Exception {
        Options options = new OptionsBuilder()
                .include(HotPaths.class.getName())
                .mode(Mode.AverageTime)
                .timeUnit(TimeUnit.MICROSECONDS)
                .forks(1)
                .warmupIterations(4)
                .warmupTime(TimeValue.seconds(1))
                .measurementIterations(5)
                .measurementTime(TimeValue.seconds(1))
                .verbosity(VerboseMode.SILENT)
                .build();
        for (RunResult result : new Runner(options).run()) {
            String name = result.getPrimaryResult().getLabel();
            Budget.note(name, result.getPrimaryResult().getScore(), "us");
            Budget.note(
                    name + ", error of the mean at 99.9 %",
                    result.getPrimaryResult().getScoreError(),
                    "us");
        }
    }
}
