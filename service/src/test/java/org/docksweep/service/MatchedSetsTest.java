package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.UUID;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.CommissioningBody;
import org.docksweep.contract.MatchedSet;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.gate.Baseline;
import org.docksweep.gate.PointReference;
import org.docksweep.sweep.AcousticCurve;
import org.docksweep.sweep.ImpedanceCurve;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** Stereo pairs and arrays out of the cabinets on the shelf. */
@ExtendWith(RunningService.class)
class MatchedSetsTest {
    private static final double[] HZ = {100, 1000, 10_000};
    private static final double[] NONE = {0, 0, 0};

    private final Api api;
    private final String model;

    MatchedSetsTest(Api api) {
        this.api = api;
        this.model = House.newModel(api);
    }

    private void teach() {
        PointReference reference = new PointReference(
                model,
                "LF",
                5,
                HZ,
                new double[] {2, 2, 2},
                NONE,
                new double[] {0.02, 0.02, 0.02},
                HZ,
                NONE,
                new double[] {0.5, 0.5, 0.5},
                null);
        assertThat(api.put(ApiPaths.REFERENCES + "/" + model + "/LF", reference).status())
                .isEqualTo(201);
    }

    private AssetTag cabinet(CabinetStatus status, double ohm, double levelDb) {
        AssetTag tag = House.newCabinet(api, model, status);
        CommissioningBody body = new CommissioningBody(
                UUID.randomUUID(),
                tag,
                House.NIGHT,
                "Ines Duna",
                List.of(new Baseline(
                        tag,
                        "LF",
                        House.NIGHT,
                        15.0,
                        new ImpedanceCurve(HZ, new double[] {ohm, ohm, ohm}, NONE, NONE),
                        new AcousticCurve(HZ, new double[] {levelDb, levelDb, levelDb}, NONE))));
        assertThat(api.put(ApiPaths.COMMISSIONINGS + "/" + body.id(), body).status())
                .isEqualTo(201);
        return tag;
    }

    private Api.Answer choose(int count) {
        return api.get(ApiPaths.MATCHED_SETS + "?model=" + model + "&count=" + count);
    }

    @Test
    void picksTheTwoOnTheShelfThatAgreeBest() {
        teach();
        AssetTag first = cabinet(CabinetStatus.READY, 8.0, 0);
        cabinet(CabinetStatus.READY, 8.5, 0);
        AssetTag second = cabinet(CabinetStatus.READY, 8.04, 0.2);
        cabinet(CabinetStatus.OUT, 8.0, 0);
        AssetTag unknown = House.newCabinet(api, model, CabinetStatus.READY);

        MatchedSet set = choose(2).as(MatchedSet.class);

        assertThat(set.members()).extracting(MatchedSet.Member::tag).containsExactly(first, second);
        assertThat(set.considered()).as("on the shelf, with curves").isEqualTo(3);
        assertThat(set.leftOut()).containsExactly(unknown);
        assertThat(set.exact()).isTrue();
        double impedance = Math.log(8.04 / 8.0) / (Math.sqrt(2) * 0.02);
        double sound = 0.2 / (Math.sqrt(2) * 0.5);
        assertThat(set.widestMismatch())
                .isCloseTo(Math.sqrt(0.5 * (impedance * impedance + sound * sound)), within(1e-9));
        assertThat(set.differences())
                .singleElement()
                .satisfies(d -> assertThat(d.levelDb()).isCloseTo(-0.2, within(1e-9)));
    }

    @Test
    void picksAnArrayAndLeavesTheOneThatIsTooQuiet() {
        teach();
        AssetTag quiet = cabinet(CabinetStatus.READY, 8.0, -4);
        for (double ohm : new double[] {7.95, 8.0, 8.05, 8.1}) {
            cabinet(CabinetStatus.READY, ohm, 0.1);
        }

        MatchedSet set = choose(4).as(MatchedSet.class);

        assertThat(set.members()).hasSize(4).extracting(MatchedSet.Member::tag).doesNotContain(quiet);
        assertThat(set.differences()).hasSize(6);
    }

    @Test
    void saysWhyThereIsNoSuchSet() {
        assertThat(choose(2).problem()).satisfies(p -> {
            assertThat(p.type()).isEqualTo(ProblemTypes.WRONG_STATE);
            assertThat(p.detail()).contains(model).contains("no reference");
        });
        teach();
        cabinet(CabinetStatus.READY, 8, 0);
        assertThat(choose(2).problem().detail()).contains("1 cabinets are on the shelf");
        assertThat(choose(1).problem().detail()).contains("from 2 to 24, but is 1");
        assertThat(api.get(ApiPaths.MATCHED_SETS + "?model=NOBODY").problem().detail())
                .contains("NOBODY");
        assertThat(api.get(ApiPaths.MATCHED_SETS).status()).isEqualTo(400);
    }
}
