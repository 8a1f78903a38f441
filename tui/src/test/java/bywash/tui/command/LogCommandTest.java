package bywash.tui.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bywash.ingest.journal.Journal;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every entry of the season from the shell, while no watch runs: into the journal, from which the next watch takes it. */
final class LogCommandTest {
    private static final String AT = "2026-05-04T06:00:00.000Z";

    @TempDir
    Path state;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @BeforeEach
    void journal() throws Exception {
        Journal.open(state, "larkfield", () -> Instant.parse(AT)).close();
    }

    private int log(String... words) {
        List<String> all = new ArrayList<>(List.of("log", "--state", state.toString()));
        all.addAll(List.of(words));
        return Main.commandLineFor("log")
                .setOut(new PrintWriter(out))
                .setErr(new PrintWriter(err))
                .execute(all.toArray(String[]::new));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            fish-in cohort=spring species=nile-tilapia count=40 mean-mass=12.5_g vessel=fish-tank
            weigh cohort=spring of=sample masses=412_g,398_g
            weigh cohort=spring of=all count=40 total=16_kg
            harvest cohort=spring count=2 masses=412_g,398_g
            harvest cohort=spring count=5 total=2_kg
            fish-loss cohort=spring count=1 cause=jumped
            fish-move cohort=spring count=10 vessel=fish-tank into=large
            feed mass=120_g protein=38_% cohort=spring appetite=eager
            plant vessel=bed-1 crop=lettuce area=0.6_m2
            crop-harvest vessel=bed-1 crop=lettuce mass=1.3_kg cleared=0.6_m2
            bed vessel=bed-1 state=off
            dose vessel=sump reagent=potassium-bicarbonate amount=40_g
            calibrate probe=fish-ph standards=4.01,6.86 readings=171_mV,4_mV temperature=21_Cel
            probe-care probe=fish-do care=new_membrane
            stocking stocking=fishless species=rainbow-trout
            withdraw entry=feed entered=2026-05-04T05:00:00.000Z which=2 why=typed_twice
            """)
    void takesDownEveryEntryOfTheSeasonAndListsItAgain(String line) {
        List<String> words = new ArrayList<>(List.of(line.split(" ")));
        words.replaceAll(w -> w.replace('_', ' '));
        words.addAll(List.of("--at", AT));
        assertEquals(ExitCode.GOOD, log(words.toArray(String[]::new)), err.toString());
        String entered = out.toString();
        assertTrue(entered.startsWith("{\"time\":\"" + AT + "\",\"operator\":\"" + words.get(0) + "\""), entered);
        out.getBuffer().setLength(0);
        assertEquals(ExitCode.GOOD, log("--days", "99999"), err.toString());
        assertEquals(entered, out.toString());
    }

    @Test
    void aDoseKeepsTheStrengthOnItsLabelAndSaysWhatToMind() {
        assertEquals(0, log("dose", "vessel=sump", "reagent=phosphoric-acid", "amount=20 g", "strength=85 %"));
        assertTrue(out.toString().contains("\"strength\":\"85 %\""), out.toString());
        assertTrue(err.toString().contains("Gloves and eye protection. Add acid to water"), err.toString());
        assertTrue(
                err.toString().contains("Never mix chemicals") && err.toString().contains("follow the label"));
    }

    @Test
    void aStrengthThatNoLabelCarriesIsRefused() {
        assertEquals(2, log("dose", "vessel=sump", "reagent=ammonia-solution", "amount=20 g", "strength=60 %"));
        assertEquals(
                "strength 60 % is not one of ammonia solution; give the percent by weight on the label, above 0 to 35",
                err.toString().strip());
        assertEquals("", out.toString());
    }

    @Test
    void saysInOneLineWhatIsWrongWhereAndWhatWouldBeRight() {
        assertEquals(ExitCode.USAGE, log("harvest", "cohort=spring", "count=3", "masses=412 g"));
        assertEquals(ExitCode.USAGE, log("calibrate", "probe=fish-ph", "standards=4.01,6.86", "readings=171 mV"));
        assertEquals(ExitCode.USAGE, log("withdraw", "entry=fed", "entered=yesterday"));
        List<String> lines = err.toString().lines().toList();
        assertEquals(3, lines.size(), err.toString());
        assertTrue(lines.get(0).contains("harvest has 1 masses of 3 fish and no \"total\""), lines.get(0));
        assertTrue(lines.get(1).contains("calibrate has 2 standards and 1 readings"), lines.get(1));
        assertTrue(lines.get(2).contains("\"entry\" of withdraw is \"fed\""), lines.get(2));
        assertEquals("", out.toString());
    }
}
