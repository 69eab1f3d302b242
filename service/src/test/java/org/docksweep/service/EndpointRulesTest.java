package org.docksweep.service;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.methods;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import jakarta.annotation.security.RolesAllowed;
import org.junit.jupiter.api.Test;
import org.springframework.web.bind.annotation.RestController;

class EndpointRulesTest {
    private static final JavaClasses SERVICE = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("org.docksweep.service");

    @Test
    void everyControllerSaysWhoMayCallIt() {
        classes()
                .that()
                .areAnnotatedWith(RestController.class)
                .should()
                .beAnnotatedWith(RolesAllowed.class)
                .because("the rules by address are the first lock, these are the second")
                .check(SERVICE);
    }

    @Test
    void noRuleStandsWhereNobodyAsksIt() {
        methods()
                .that()
                .areAnnotatedWith(RolesAllowed.class)
                .should()
                .beDeclaredInClassesThat()
                .areAnnotatedWith(RestController.class)
                .because("only controllers are asked, see SecurityConfiguration")
                .check(SERVICE);
        classes()
                .that()
                .areAnnotatedWith(RolesAllowed.class)
                .should()
                .beAnnotatedWith(RestController.class)
                .check(SERVICE);
    }
}
