package org.docksweep.suspect;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import org.docksweep.circuit.CircuitFault;
import org.docksweep.circuit.SampleCabinets;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Reasons;
import org.docksweep.fleet.TestPoint;
import org.docksweep.gate.DrawnUnits;
import org.docksweep.gate.Knowledge;
import org.docksweep.gate.PointReference;
import org.docksweep.gate.ReferenceTeacher;
import org.junit.jupiter.api.Test;

class AmbiguityGroupsTest {
    private static final long TAUGHT_FROM = 300;

    @Test
    void everyFaultIsInOneGroupNoneLargeAndNoneAcrossWays() {
        for (ModelBook book : List.of(SampleCabinets.twoWay(), SampleCabinets.doubleFifteen())) {
            AmbiguityGroups groups = groups(book);
            List<AmbiguityGroups.Member> all =
                    groups.groups().stream().flatMap(g -> g.members().stream()).toList();
            assertThat(all).hasSize(HypothesisSet.of(model(book), point(book)).size() - 1);
            assertThat(groups.groups()).allSatisfy(g -> assertThat(g.members()).hasSizeLessThanOrEqualTo(5));
            long small = groups.groups().stream()
                    .mapToInt(g -> g.members().size())
                    .filter(n -> n <= 2)
                    .sum();
            assertThat(small).isGreaterThanOrEqualTo((long) Math.ceil(0.6 * all.size()));
            assertThat(groups.mixesWays(model(book))).isFalse();
        }
    }

    @Test
    void equalDriversInOneBoxLookAlikeAndTheTagSaysWhatSplitsThem() {
        AmbiguityGroups groups = groups(SampleCabinets.doubleFifteen());
        AmbiguityGroups.Group open =
                groups.groupOf(FaultKind.DRIVER_OPEN, "LF1", null).orElseThrow();
        assertThat(open.members()).anyMatch(m -> m.is(FaultKind.DRIVER_OPEN, "LF2", null));
        assertThat(open.split()).isEqualTo(Split.MEASURE_AT_DRIVER);
        List<Suspect> arranged = groups.arrange(List.of(
                suspect(FaultKind.LEAK, "LF1", "BOX", 0.4),
                suspect(FaultKind.DRIVER_OPEN, "LF2", null, 0.3),
                suspect(FaultKind.DRIVER_OPEN, "LF1", null, 0.3)));
        // together the two open drivers are more probable than the leak
        assertThat(arranged)
                .extracting(Suspect::kind)
                .containsExactly(FaultKind.DRIVER_OPEN, FaultKind.DRIVER_OPEN, FaultKind.LEAK);
        Suspect first = arranged.get(0);
        assertThat(first.alike()).hasSize(1);
        assertThat(Reasons.text(first.alike().get(0), java.util.Locale.ENGLISH)).isEqualTo("LF1: open");
        assertThat(Reasons.text(first.split(), java.util.Locale.ENGLISH)).contains("driver itself");
    }

    @Test
    void everySplitHasWordsInBothLanguages() {
        for (Split split : Split.values()) {
            Reason reason = Reason.of(
                    "split-" + split.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-'));
            assertThat(Reasons.text(reason, java.util.Locale.ENGLISH)).isNotBlank();
            assertThat(Reasons.text(reason, java.util.Locale.GERMAN))
                    .isNotEqualTo(Reasons.text(reason, java.util.Locale.ENGLISH));
        }
    }

    @Test
    void smallFaultsStandOutLess() {
        ModelBook book = SampleCabinets.twoWay();
        Knowledge knowledge = Knowledge.nominal(book, model(book), point(book)).taughtBy(reference(book));
        AmbiguityGroups large =
                AmbiguityGroups.of(book, model(book), point(book), knowledge, Severities.WITH_REFERENCE);
        AmbiguityGroups small = AmbiguityGroups.of(book, model(book), point(book), knowledge, Severities.WITH_BASELINE);
        for (String driver : List.of("LF1", "HF1")) {
            assertThat(deviations(small, FaultKind.SHORTED_TURNS, driver))
                    .isLessThan(deviations(large, FaultKind.SHORTED_TURNS, driver));
        }
    }

    @Test
    void withoutAReferenceThereIsNothingToComputeFrom() {
        ModelBook book = SampleCabinets.twoWay();
        Knowledge untaught = Knowledge.nominal(book, model(book), point(book));
        assertThatThrownBy(
                        () -> AmbiguityGroups.of(book, model(book), point(book), untaught, Severities.WITH_REFERENCE))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("no reference");
    }

    private static double deviations(AmbiguityGroups groups, FaultKind kind, String position) {
        return groups.groups().stream()
                .flatMap(g -> g.members().stream())
                .filter(m -> m.is(kind, position, null))
                .findFirst()
                .orElseThrow()
                .deviations();
    }

    private static Suspect suspect(FaultKind kind, String position, String element, double probability) {
        return new Suspect(
                kind, "IN", position, element, probability, Reason.of("suspect-leak", ""), Reason.of("next-leak", ""));
    }

    private static AmbiguityGroups groups(ModelBook book) {
        return AmbiguityGroups.of(book, model(book), point(book), reference(book));
    }

    private static PointReference reference(ModelBook book) {
        List<ReferenceTeacher.Unit> units = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            units.add(DrawnUnits.unit(book, CircuitFault.NONE, 0, TAUGHT_FROM + i));
        }
        return ReferenceTeacher.teach(book, model(book).code(), point(book).code(), units);
    }

    private static CabinetModel model(ModelBook book) {
        return book.cabinetModels().get(0);
    }

    private static TestPoint point(ModelBook book) {
        return model(book).testPoints().get(0);
    }
}
