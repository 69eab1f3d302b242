package org.docksweep;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideOutsideOfPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;

/** Holds the order of the packages: each may use all below it, none above. */
class PackageOrderTest {
    private static final String ROOT = "org.docksweep";

    /** Top to bottom. */
    static final List<String> ORDER = List.of(
            "paper",
            "contract",
            "judge",
            "suspect",
            "gate",
            "circuit",
            "acoustic",
            "rigcal",
            "sweep",
            "survival",
            "fleet");

    private static final String[] DRAWING = {
        "java.awt..",
        "javax.swing..",
        "javax.print..",
        "com.lowagie..",
        "org.openpdf..",
        "org.jfree..",
        "com.google.zxing.."
    };

    private static JavaClasses main;

    @BeforeAll
    static void readClasses() {
        main = new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_JARS)
                .importPackages(ROOT);
    }

    @ParameterizedTest
    @FieldSource("ORDER")
    void usesOnlyPackagesBelow(String name) {
        usesOnlyItselfAndBelow(name).check(main);
    }

    @Test
    void knowsEveryPackageOfTheModule() {
        assertThat(main.stream().map(JavaClass::getPackageName).map(PackageOrderTest::firstPart))
                .as("a new package needs its place in the order")
                .isSubsetOf(ORDER)
                .contains("paper", "contract", "judge", "gate", "sweep", "fleet");
    }

    @Test
    void noticesUseOfAPackageAbove() {
        ArchRule paperMayNotUseTheContract = noClasses()
                .that()
                .resideInAPackage(ROOT + ".paper..")
                .should()
                .dependOnClassesThat()
                .resideInAPackage(ROOT + ".contract..");

        assertThat(paperMayNotUseTheContract.evaluate(main).hasViolation())
                .as("the import must see that paper uses the contract, or the rules above prove nothing")
                .isTrue();
    }

    @Test
    void drawsOnPaperOnly() {
        noClasses()
                .that()
                .resideOutsideOfPackage(ROOT + ".paper..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(DRAWING)
                .check(main);
    }

    @Test
    void seesNeitherSpringNorPersistenceNorSwing() {
        noClasses()
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(
                        "org.springframework..",
                        "jakarta.persistence..",
                        "jakarta.servlet..",
                        "org.hibernate..",
                        "javax.swing..",
                        "com.formdev..",
                        "net.miginfocom..")
                .check(main);
    }

    private static ArchRule usesOnlyItselfAndBelow(String name) {
        String[] allowed = ORDER.subList(ORDER.indexOf(name), ORDER.size()).stream()
                .map(below -> ROOT + "." + below + "..")
                .toArray(String[]::new);
        return classes()
                .that()
                .resideInAPackage(ROOT + "." + name + "..")
                .should()
                .onlyDependOnClassesThat(describe(
                        "lie outside the house, or in " + name + " or below",
                        resideOutsideOfPackage(ROOT + "..").or(resideInAnyPackage(allowed))))
                // Packages are laid out before their classes arrive.
                .allowEmptyShould(true);
    }

    private static String firstPart(String packageName) {
        String rest = packageName.substring(Math.min(packageName.length(), ROOT.length() + 1));
        int dot = rest.indexOf('.');
        return dot < 0 ? rest : rest.substring(0, dot);
    }
}
