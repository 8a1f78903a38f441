package bywash.rules.water;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaMethodCall;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PurityTest {
    /** Methods of Math that may give another last bit on another machine, or that StrictMath spells the same. */
    private static final Set<String> NOT_THE_SAME_EVERYWHERE = Set.of(
            "exp", "expm1", "log", "log10", "log1p", "pow", "sqrt", "cbrt", "sin", "cos", "tan", "asin", "acos", "atan",
            "random");

    private static final JavaClasses RULES = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("bywash.rules.water", "bywash.rules.vessel", "bywash.rules.husbandry");

    @ParameterizedTest
    @ValueSource(strings = {"bywash.rules.water", "bywash.rules.vessel"})
    void seesOnlyItselfAndThePlainJavaLibrary(String home) {
        classes()
                .that()
                .resideInAPackage(home)
                .should()
                .onlyDependOnClassesThat()
                .resideInAnyPackage(home, "java.lang..", "java.util..", "java.time..", "org.jspecify..")
                .check(RULES);
    }

    @Test
    void takesItsExponentialsFromStrictMath() {
        noClasses()
                .should()
                .callMethodWhere(DescribedPredicate.describe(
                        "the method is one of Math that differs between machines",
                        (JavaMethodCall call) -> call.getTargetOwner().isEquivalentTo(Math.class)
                                && NOT_THE_SAME_EVERYWHERE.contains(call.getName())))
                .check(RULES);
    }

    @Test
    void readsNoClock() {
        noClasses()
                .should()
                .callMethodWhere(DescribedPredicate.describe(
                        "the method reads a clock",
                        (JavaMethodCall call) -> call.getName().equals("now")
                                || call.getName().equals("currentTimeMillis")
                                || call.getName().equals("nanoTime")))
                .check(RULES);
    }
}
