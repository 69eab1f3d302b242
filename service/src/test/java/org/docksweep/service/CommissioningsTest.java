package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.CommissioningBody;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.ModelBook;
import org.docksweep.gate.Baseline;
import org.docksweep.gate.LimitSet;
import org.docksweep.gate.PointReference;
import org.docksweep.sweep.ImpedanceCurve;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import tools.jackson.databind.node.ObjectNode;

@ExtendWith(RunningService.class)
class CommissioningsTest {
    private final Api api;
    private final String model;

    CommissioningsTest(Api api) {
        this.api = api;
        this.model = House.newModel(api);
    }

    private static CommissioningBody sweep(AssetTag tag, Instant at, String... points) {
        List<Baseline> baselines = java.util.Arrays.stream(points)
                .map(p -> new Baseline(
                        tag,
                        p,
                        at,
                        15.0,
                        new ImpedanceCurve(
                                new double[] {20, 20000}, new double[] {5.6, 9}, new double[] {0, 6}, new double[] {0, 0
                                }),
                        null))
                .toList();
        return new CommissioningBody(UUID.randomUUID(), tag, at, "Ines Duna", baselines);
    }

    private Api.Answer put(CommissioningBody body) {
        return api.put(ApiPaths.COMMISSIONINGS + "/" + body.id(), body);
    }

    private List<Baseline> inForce(AssetTag tag) {
        return api.get(ApiPaths.KIOSK_SNAPSHOT).as(KioskSnapshot.class).baselines().stream()
                .filter(b -> b.tag().equals(tag))
                .toList();
    }

    @Test
    void comparesWithTheNewestSweepWhateverTheOrderTheyArriveIn() {
        AssetTag tag = House.newCabinet(api, model, CabinetStatus.READY);
        CommissioningBody newer = sweep(tag, House.NIGHT, "HF", "LF");
        CommissioningBody older = sweep(tag, House.NIGHT.minusSeconds(86_400), "HF");

        assertThat(put(newer).status()).isEqualTo(201);
        assertThat(put(newer).status()).isEqualTo(200);
        assertThat(put(older).status()).isEqualTo(201);

        assertThat(inForce(tag)).isEqualTo(newer.baselines());
        assertThat(api.get(ApiPaths.COMMISSIONINGS + "/" + older.id()).as(CommissioningBody.class))
                .isEqualTo(older);
    }

    @Test
    void refusesTestPointsTheModelDoesNotHave() {
        AssetTag tag = House.newCabinet(api, model, CabinetStatus.READY);
        Api.Answer answer = put(sweep(tag, House.NIGHT, "IN"));

        assertThat(answer.problem().type()).isEqualTo(ProblemTypes.BAD_FIELD);
        assertThat(answer.problem().detail()).contains("[HF, LF]");
        assertThat(inForce(tag)).isEmpty();
    }

    @Test
    void keepsOneReferencePerTestPointInForce() {
        ObjectNode reference = Api.MAPPER.createObjectNode();
        reference.put("cabinetModelCode", model).put("testPointCode", "LF").put("unitCount", 3);
        for (String name : List.of("frequencyHz", "meanLogOhm", "meanPhaseRad", "spreadLog")) {
            reference.putArray(name).add(20.0).add(2000.0);
        }
        for (String name : List.of("acousticFrequencyHz", "meanLevelDb", "spreadLevelDb")) {
            reference.putArray(name);
        }
        String path = ApiPaths.REFERENCES + "/" + model + "/LF";

        assertThat(api.put(path, reference).status()).isEqualTo(201);
        assertThat(api.put(path, reference).status()).isEqualTo(200);
        reference.put("unitCount", 4);
        assertThat(api.put(path, reference).status()).isEqualTo(200);

        assertThat(api.get(path).as(PointReference.class).unitCount()).isEqualTo(4);
        assertThat(api.get(ApiPaths.REFERENCES).listOf(PointReference.class))
                .filteredOn(r -> r.cabinetModelCode().equals(model))
                .hasSize(1);
        assertThat(api.put(ApiPaths.REFERENCES + "/" + model + "/HF", reference)
                        .problem()
                        .type())
                .isEqualTo(ProblemTypes.BAD_FIELD);
    }

    @Test
    void mergesModelsByCodeAndStartsWithTheLimitsOfANewHouse() {
        String other = House.newModel(api);
        ModelBook book = api.get(ApiPaths.MODEL_BOOK).as(ModelBook.class);

        assertThat(book.cabinetModel(model)).isEqualTo(House.book(model).cabinetModel(model));
        assertThat(book.cabinetModel(other)).isEqualTo(House.book(other).cabinetModel(other));
        assertThat(api.put(ApiPaths.MODEL_BOOK, House.book(model)).status()).isEqualTo(200);
        // other tests of this service may have put newer ones into force
        assertThat(api.get(ApiPaths.LIMITS + "/1").as(LimitSet.class)).isEqualTo(LimitSet.initial());
    }
}
