package org.docksweep.kiosk.proving;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.ServiceLoader;
import org.docksweep.contract.ProvingFaultKind;
import org.docksweep.contract.ProvingGround;
import org.docksweep.contract.ProvingGround.Models;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class AmbiguityGroupsTest {
    private final ProvingGround ground =
            ServiceLoader.load(ProvingGround.class).findFirst().orElseThrow();
    private final AmbiguityGroups groups = AmbiguityGroups.of(ground, Runs.of(Models.TUNING, 1, 10, 1));

    private AmbiguityGroups.Group groupOf(String model, ProvingFaultKind kind, String target) {
        return groups.all().get(model).stream()
                .filter(g -> g.members().stream()
                        .anyMatch(f -> f.kind() == kind && f.target().equals(target)))
                .findFirst()
                .orElseThrow();
    }

    private static List<String> names(AmbiguityGroups.Group group) {
        return group.members().stream().map(f -> f.kind() + " " + f.target()).toList();
    }

    /** Two equal coils in parallel in one box: which one is open cannot be seen from outside. */
    @Test
    void cannotTellTwoEqualDriversApart() {
        assertThat(names(groupOf("UNDR215", ProvingFaultKind.ONE_OF_TWO_OPEN, "LF1")))
                .contains("ONE_OF_TWO_OPEN LF1", "ONE_OF_TWO_OPEN LF2");
    }

    /** The fault of one is the fault of the other, whatever the production spread of one unit says. */
    @ParameterizedTest
    @EnumSource(names = {"CONTACT_RESISTANCE", "SHORTED_TURNS", "MAGNET_WEAK", "SEIZED", "POLARITY", "RUB"})
    void putsTheSameFaultOfTwoEqualDriversTogether(ProvingFaultKind kind) {
        assertThat(names(groupOf("UNDR215", kind, "LF1"))).contains(kind + " LF1", kind + " LF2");
    }

    /** At a driver's own terminals, a short at the coil is a short at the contacts. */
    @Test
    void cannotTellAShortAtTheContactsFromOneAtTheCoil() {
        assertThat(names(groupOf("DUNE15B", ProvingFaultKind.TERMINALS_SHORTED, "LF")))
                .containsExactlyInAnyOrder("TERMINALS_SHORTED LF", "COIL_SHORTED LF");
    }

    @Test
    void tellsAnOpenHighDriverFromEveryOtherFault() {
        assertThat(names(groupOf("HEAD3", ProvingFaultKind.DRIVER_OPEN, "HF"))).containsExactly("DRIVER_OPEN HF");
    }

    @Test
    void putsEveryFaultIntoExactlyOneGroup() {
        groups.all().forEach((model, ofModel) -> {
            List<?> members =
                    ofModel.stream().flatMap(g -> g.members().stream()).toList();
            long faults = ground.faults(model).stream()
                    .filter(f -> f.kind().group() != ProvingFaultKind.Group.NOT_A_FAULT)
                    .count();
            assertThat(members).doesNotHaveDuplicates().hasSize((int) faults);
        });
    }
}
