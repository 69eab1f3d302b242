package org.docksweep.service;

import org.junit.jupiter.api.Test;
import org.springframework.modulith.core.ApplicationModules;

class ModularityTest {
    @Test
    void featuresUseEachOtherInOneDirectionAndThroughTheirPublicDoors() {
        ApplicationModules.of(DocksweepService.class).verify();
    }
}
