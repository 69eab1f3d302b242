package org.docksweep.demo;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

/** The simulator is a witness: it may not know how the gate measures or judges. */
class DemoArchitectureTest {
    private static final JavaClasses DEMO = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("org.docksweep.demo");

    @Test
    void looksAtSomething() {
        assertThat(DEMO.size()).isGreaterThan(30);
    }

    @Test
    void knowsNothingOfTheGate() {
        noClasses()
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(
                        "org.docksweep.circuit..",
                        "org.docksweep.gate..",
                        "org.docksweep.suspect..",
                        "org.docksweep.judge..",
                        "org.docksweep.rigcal..",
                        "org.docksweep.paper..",
                        "org.docksweep.service..",
                        "org.docksweep.kiosk..")
                .check(DEMO);
    }

    @Test
    void usesOnlyGeneratorAndRecordingTypesOfSweep() {
        classes()
                .should()
                .onlyDependOnClassesThat(
                        new com.tngtech.archunit.base.DescribedPredicate<>(
                                "are the sweep generator, capture or rig types, or of another package") {
                            @Override
                            public boolean test(com.tngtech.archunit.core.domain.JavaClass type) {
                                return !type.getPackageName().startsWith("org.docksweep.sweep")
                                        || type.getSimpleName()
                                                .matches(
                                                        "SweepSignal|SweepPlan|Capture(Header|Channel)?|ChannelRole"
                                                                + "|Rig|RigProvider|RigException|PracticeRig|ProgressListener|Cause");
                            }
                        })
                .check(DEMO);
    }
}
