package bywash.tui.command.calc;

import bywash.rules.water.FirstOrderLoss;
import bywash.rules.water.LossFit;
import bywash.rules.water.LossPrior;
import bywash.rules.water.LossRate;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** How long standing water takes to lose its chlorine. */
@Command(
        name = "chlorine-wait",
        description =
                "Time until a residual has fallen to a limit, from your own dated tests or from a wide assumption.")
final class ChlorineWaitCommand extends Calculation {
    private static final double NANOS_PER_HOUR = 3.6e12;

    @Option(names = "--residual", description = "Residual now, as in \"0.9 mg/L\"; the last test without it.")
    private @Nullable String residual;

    @Option(
            names = "--limit",
            description = "Limit to fall to, as in \"19 ug/L\", which is also what is taken without it.")
    private @Nullable String limit;

    @Option(names = "--water", description = "How it stands: still, aerated, sunlit or chloramine.")
    private @Nullable String water;

    @Option(
            names = "--test",
            arity = "1",
            description =
                    "A test of this batch, as in \"2026-05-05T18:00Z 0.9 mg/L\" or \"12 h 0.4 mg/L\"; twice or more.")
    private List<String> tests = new ArrayList<>();

    @Override
    Answer answer() {
        if (tests.isEmpty() == (water == null)) {
            throw new IllegalArgumentException("give either --water or at least two --test");
        }
        Answer answer = new Answer("Chlorine lost from standing water");
        List<LossFit.Test> read = tests.stream().map(ChlorineWaitCommand::test).toList();
        LossRate rate;
        if (water != null) {
            LossPrior prior = Typed.word("--water", water, LossPrior.values(), LossPrior::word);
            rate = prior.rate();
            answer.remark("Assumed rate, " + prior.word() + " water: " + prior.basis() + ".")
                    .remark("Two dated tests of your own vessel are worth more.");
        } else {
            rate = LossFit.fit(read);
            answer.remark("Rate fitted from " + read.size() + " tests, with its 95 % confidence range.");
        }
        double start = residual == null && !read.isEmpty()
                ? last(read)
                : Typed.measure("--residual", residual, Dimension.CONCENTRATION);
        double goal = Typed.measureOr("--limit", limit, Dimension.CONCENTRATION, 0.019);
        FirstOrderLoss.Wait wait = FirstOrderLoss.until(start, goal, rate);
        return answer.number("residual now", start, "mg/L")
                .number("limit", goal, "mg/L")
                .number("rate, low end", rate.lowPerHour(), "1/h")
                .number("rate, likely", rate.likelyPerHour(), "1/h")
                .number("rate, high end", rate.highPerHour(), "1/h")
                .number("wait, earliest", wait.earliestH(), "h")
                .number("wait, likely", wait.likelyH(), "h")
                .number("wait, latest", wait.latestH(), "h")
                .source("first-order rate law; least squares after Draper and Smith 1998, ch. 1")
                .caution(Cautions.TEST);
    }

    private static double last(List<LossFit.Test> tests) {
        LossFit.Test last = tests.get(0);
        for (LossFit.Test test : tests) {
            last = test.hours() > last.hours() ? test : last;
        }
        return last.residualMgL();
    }

    private static LossFit.Test test(String text) {
        String[] words = text.trim().split("\\s+", 2);
        if (words.length == 2 && words[0].contains("T")) {
            return new LossFit.Test(hours(words[0], text), Typed.measure("--test", words[1], Dimension.CONCENTRATION));
        }
        String[] four = text.trim().split("\\s+");
        if (four.length == 4) {
            return new LossFit.Test(
                    Typed.measure("--test", four[0] + " " + four[1], Dimension.TIME),
                    Typed.measure("--test", four[2] + " " + four[3], Dimension.CONCENTRATION));
        }
        throw malformed(text);
    }

    private static double hours(String time, String text) {
        try {
            Duration since = Duration.between(OffsetDateTime.parse("2020-01-01T00:00Z"), OffsetDateTime.parse(time));
            return since.toSeconds() / 3600.0 + since.getNano() / NANOS_PER_HOUR;
        } catch (DateTimeException e) {
            throw malformed(text);
        }
    }

    private static IllegalArgumentException malformed(String text) {
        return new IllegalArgumentException("--test is \"" + text
                + "\"; it must be a time and a residual, such as \"2026-05-05T18:00Z 0.9 mg/L\" or \"12 h 0.4 mg/L\"");
    }
}
