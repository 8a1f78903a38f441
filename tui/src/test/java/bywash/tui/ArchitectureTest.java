package bywash.tui;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The arrows between modules and packages. */
@AnalyzeClasses(packages = "bywash", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
    /** Tests of all modules; of those before this one, what was compiled. */
    @Test
    void noTestSleeps() {
        List<Path> tests = Stream.of("../rules", "../ingest", "../sample-feeds", ".")
                .map(module -> Path.of(module, "target", "test-classes"))
                .filter(Files::isDirectory)
                .toList();
        assumeTrue(!tests.isEmpty(), "compiled by hand, not by the build");
        JavaClasses classes = new ClassFileImporter().importPaths(tests);
        assertTrue(classes.contain(ArchitectureTest.class), tests.toString());
        noClasses()
                .that()
                .resideOutsideOfPackage("..jmh_generated..")
                .should()
                .callMethod(Thread.class, "sleep", long.class)
                .orShould()
                .callMethod(TimeUnit.class, "sleep", long.class)
                .because("a test waits for what happens, not for time")
                .check(classes);
    }

    @ArchTest
    static final ArchRule rulesSeeNothingElse = noClasses()
            .that()
            .resideInAPackage("bywash.rules..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(
                    "bywash.ingest..", "bywash.samples..", "bywash.tui..", "java.io..", "java.nio..", "org.slf4j..");

    @ArchTest
    static final ArchRule ingestDoesNotSeeTheScreen = noClasses()
            .that()
            .resideInAPackage("bywash.ingest..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("bywash.tui..", "bywash.samples..");

    @ArchTest
    static final ArchRule simulationUsesNoDetection = noClasses()
            .that()
            .resideInAPackage("bywash.samples..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(
                    "bywash.rules.detect..",
                    "bywash.rules.engine..",
                    "bywash.rules.chlorine..",
                    "bywash.rules.alarm..",
                    "bywash.tui..");

    @ArchTest
    static final ArchRule onlyScreensSeeLanterna = noClasses()
            .that()
            .resideOutsideOfPackages("bywash.tui.screen..")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("com.googlecode.lanterna..");

    @ArchTest
    static final ArchRule onlyTheFeedSeesTheClient = noClasses()
            .that()
            .resideOutsideOfPackage("bywash.ingest.mqtt..")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("com.hivemq..");

    @ArchTest
    static final ArchRule neverSwing = noClasses()
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("javax.swing..", "com.googlecode.lanterna.terminal.swing..");

    @ArchTest
    static final ArchRule detectionSeesNoAlarm = noClasses()
            .that()
            .resideInAPackage("bywash.rules.detect..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("bywash.rules.alarm..", "bywash.rules.engine..", "bywash.rules.chlorine..");
}
