package org.docksweep.service;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;

import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import jakarta.annotation.security.RolesAllowed;
import org.junit.jupiter.api.Test;
import org.springframework.web.bind.annotation.RestController;

class EndpointRulesTest {
    @Test
    void everyControllerSaysWhoMayCallIt() {
        classes()
                .that()
                .areAnnotatedWith(RestController.class)
                .should()
                .beAnnotatedWith(RolesAllowed.class)
                .because("the rules by address are the first lock, these are the second")
                .check(new ClassFileImporter()
                        .withImportOption(new ImportOption.DoNotIncludeTests())
                        .importPackages("org.docksweep.service"));
    }
}
