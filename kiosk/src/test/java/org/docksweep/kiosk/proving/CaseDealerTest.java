package org.docksweep.kiosk.proving;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import java.util.ServiceLoader;
import java.util.function.Predicate;
import org.docksweep.contract.ProvingFaultKind;
import org.docksweep.contract.ProvingFaultKind.Group;
import org.docksweep.contract.ProvingGround;
import org.docksweep.contract.ProvingGround.Models;
import org.junit.jupiter.api.Test;

class CaseDealerTest {
    private final ProvingGround ground =
            ServiceLoader.load(ProvingGround.class).findFirst().orElseThrow();

    private List<ReturnCase> dealt(long seed, int returns) {
        return new CaseDealer(ground, Runs.of(Models.TUNING, seed, returns, 1)).deal();
    }

    @Test
    void dealsTheSameReturnsForTheSameSeedAndOthersForAnother() {
        assertThat(dealt(3, 200)).isEqualTo(dealt(3, 200)).isNotEqualTo(dealt(4, 200));
    }

    @Test
    void dealsTheSameReturnsHoweverOftenModelsAreTaughtAndSpreadsThemOverTheTeachings() {
        List<ReturnCase> once = dealt(3, 300);

        List<ReturnCase> thrice = new CaseDealer(ground, Runs.taught(Runs.of(Models.TUNING, 3, 300, 1), 3)).deal();

        assertThat(thrice)
                .extracting(ReturnCase::unit)
                .isEqualTo(once.stream().map(ReturnCase::unit).toList());
        assertThat(once).allMatch(c -> c.teaching() == 0);
        for (int t = 0; t < 3; t++) {
            int teaching = t;
            assertThat(count(thrice, c -> c.teaching() == teaching)).isBetween(70, 130);
        }
    }

    @Test
    void beginsALongRunLikeAShortOne() {
        assertThat(dealt(3, 300).subList(0, 100)).isEqualTo(dealt(3, 100));
    }

    @Test
    void dealsThreeThousandHardFaultsInTenThousandReturns() {
        List<ReturnCase> run = dealt(1, 10_000);

        assertThat(count(run, c -> is(c, Group.HARD))).isGreaterThan(3_000);
        assertThat(count(run, ReturnCase::healthy)).isGreaterThan(2_000);
        for (ProvingFaultKind kind : ProvingFaultKind.values()) {
            int least = kind == ProvingFaultKind.UNTAUGHT_MODEL ? 60 : 100;
            assertThat(count(run, c -> !c.healthy() && c.fault().kind() == kind))
                    .as(kind.name())
                    .isGreaterThan(least);
        }
    }

    @Test
    void takesTheSeverityThatBelongsToWhatIsKnown() {
        List<ReturnCase> drifted = dealt(1, 2_000).stream()
                .filter(c -> !c.healthy() && c.fault().kind() == ProvingFaultKind.PART_OFF_VALUE)
                .toList();

        assertThat(drifted)
                .anyMatch(c -> c.unit().severity() < 0)
                .anyMatch(c -> c.unit().severity() > 0);
        assertThat(drifted)
                .allMatch(c -> Math.abs(c.unit().severity()) == (c.knowing() == Knowing.BASELINE ? 0.15 : 0.35));
    }

    @Test
    void putsAHealthyStrangerUnderAWrongLabel() {
        List<ReturnCase> strangers = dealt(1, 2_000).stream()
                .filter(c -> !c.healthy() && c.fault().kind() == ProvingFaultKind.WRONG_LABEL)
                .toList();

        assertThat(strangers).isNotEmpty();
        assertThat(strangers).allSatisfy(c -> {
            assertThat(c.unit().modelCode()).isNotEqualTo(c.labelModel());
            assertThat(c.unit().fault()).isNull();
            assertThat(c.before().modelCode()).isEqualTo(c.labelModel());
        });
    }

    @Test
    void keepsSeedsOfTuningAndOfHeldBackModelsApart() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Runs.of(Models.HELD_BACK, 1, 10, 1))
                .withMessageContaining("100000");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Runs.of(Models.TUNING, 100_000, 10, 1))
                .withMessageContaining("held back");
    }

    private static boolean is(ReturnCase c, Group group) {
        return !c.healthy() && c.fault().kind().group() == group;
    }

    private static int count(List<ReturnCase> cases, Predicate<ReturnCase> what) {
        return (int) cases.stream().filter(what).count();
    }
}
