package bywash.tui;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** The arrows between modules and packages. */
@AnalyzeClasses(packages = "bywash", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
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
