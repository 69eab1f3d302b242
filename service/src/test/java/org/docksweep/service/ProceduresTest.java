package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.docksweep.contract.ApiPaths;
import org.docksweep.fleet.BareDriver;
import org.docksweep.fleet.DriverBenchData;
import org.docksweep.fleet.ProcedureCard;
import org.docksweep.fleet.ProcedurePurpose;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Reasons;
import org.docksweep.gate.PointReference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tools.jackson.databind.node.ObjectNode;

@ExtendWith(RunningService.class)
class ProceduresTest {
    private final Api api;

    ProceduresTest(Api api) {
        this.api = api;
        House.newModel(api);
    }

    private ProcedureCard card(ProcedurePurpose purpose, String driver) {
        return BenchDesk.expect(
                        200, api.get(ApiPaths.PROCEDURES + "/" + purpose + (driver == null ? "" : "/" + driver)))
                .as(ProcedureCard.class);
    }

    private static DriverBenchData numbers(String driver, int count, String drive) {
        return new DriverBenchData(
                driver,
                new DriverBenchData.Fasteners(count, "M4 x 12", drive, 1.1, "crosswise"),
                "two pins",
                new DriverBenchData.Gap("MF-1", 60.0),
                List.of("hex key"),
                null,
                Map.of(ProcedurePurpose.DIAPHRAGM_REPLACEMENT, 33),
                Map.of("fit-part", "Turn the notch up."));
    }

    @ParameterizedTest
    @EnumSource(ProcedurePurpose.class)
    void givesTheGenericCardNoNumbers(ProcedurePurpose purpose) {
        ProcedureCard generic = card(purpose, null);

        assertThat(generic.driverModelCode()).isNull();
        assertThat(generic.steps()).hasSizeGreaterThan(3).allSatisfy(step -> {
            assertThat(step.numbers()).isEmpty();
            assertThat(step.note()).isNull();
            assertThat(Reasons.text(step.text(), Locale.ENGLISH)).doesNotContainPattern("[0-9]");
            assertThat(Reasons.text(step.text(), Locale.GERMAN)).isNotBlank();
        });
        assertThat(generic.steps()).anyMatch(step -> !step.cautions().isEmpty());
        assertThat(generic.steps()).extracting(ProcedureCard.Step::code).doesNotHaveDuplicates();
    }

    @Test
    void putsTheNumbersOfTheDriverWhereTheyAreNeeded() {
        DriverBenchData data = numbers("REED-1", 4, "hex socket 3 mm");
        String path = ApiPaths.DRIVER_BENCH_DATA + "/REED-1";
        assertThat(api.put(path, data).status()).isIn(200, 201);
        assertThat(api.put(path, data).status()).isEqualTo(200);

        ProcedureCard card = card(ProcedurePurpose.DIAPHRAGM_REPLACEMENT, "REED-1");

        assertThat(card.effortMinutes()).isEqualTo(33);
        assertThat(card.polarityProofNeeded()).isTrue();
        assertThat(words(card, "take-out-diaphragm"))
                .containsExactly("4 fasteners M4 x 12, hex socket 3 mm", "Tools: hex key");
        assertThat(words(card, "close-up")).containsExactly("Tighten to 1.1 Nm, crosswise");
        assertThat(words(card, "clean-gap"))
                .containsExactly("Gap with magnetic fluid: blot it, refill 60 microlitre of MF-1");
        assertThat(words(card, "mark")).containsExactly("Polarity mark: red");
        assertThat(step(card, "fit-part").note()).isEqualTo("Turn the notch up.");
        assertThat(step(card, "clean-gap").cautions()).extracting(Reason::key).containsExactly("bench-caution-magnet");
        assertThat(step(card, "prove").cautions()).extracting(Reason::key).containsExactly("bench-caution-ears");
    }

    private static ProcedureCard.Step step(ProcedureCard card, String code) {
        return card.steps().stream()
                .filter(s -> s.code().equals(code))
                .findFirst()
                .orElseThrow();
    }

    private static List<String> words(ProcedureCard card, String code) {
        return step(card, code).numbers().stream()
                .map(n -> Reasons.text(n, Locale.ENGLISH))
                .toList();
    }

    @Test
    void saysWhichNumbersAreNotOnRecord() {
        ProcedureCard card = card(ProcedurePurpose.RECONE, "DUNE-12");

        assertThat(words(card, "lift-out"))
                .containsExactly("Not on record for DUNE-12: fasteners. Read it off the driver and have it entered.");
        assertThat(card.effortMinutes())
                .isEqualTo(card(ProcedurePurpose.RECONE, null).effortMinutes());
    }

    @Test
    void refusesNumbersOfAnUnknownDriverAndNotesNobodyWouldRead() {
        Api.Answer unknown = api.put(ApiPaths.DRIVER_BENCH_DATA + "/NOBODY-1", numbers("NOBODY-1", 4, "hex"));
        DriverBenchData lost =
                new DriverBenchData("DUNE-12", null, null, null, List.of(), null, Map.of(), Map.of("polish", "shine"));
        Api.Answer note = api.put(ApiPaths.DRIVER_BENCH_DATA + "/DUNE-12", lost);
        Api.Answer nonsense = api.putText(
                ApiPaths.DRIVER_BENCH_DATA + "/DUNE-12",
                Api.MAPPER.writeValueAsString(numbers("DUNE-12", 4, "hex")).replace("1.1", "-1.1"),
                "application/json");

        assertThat(unknown.problem().detail()).contains("NOBODY-1");
        assertThat(note.problem().field()).isEqualTo("notes.polish");
        assertThat(nonsense.problem().detail()).contains("tighteningNm", "greater than 0");
        assertThat(api.get(ApiPaths.DRIVER_BENCH_DATA + "/DUNE-12").status()).isEqualTo(404);
        assertThat(api.get(ApiPaths.PROCEDURES + "/RECONE/NOBODY-1").status()).isEqualTo(400);
    }

    @Test
    void keepsReferencesOfBareDriversApartFromThoseOfCabinets() {
        ObjectNode reference = Api.MAPPER.createObjectNode();
        reference
                .put("cabinetModelCode", BareDriver.modelCode("REED-1"))
                .put("testPointCode", BareDriver.TEST_POINT)
                .put("unitCount", 3);
        for (String name : List.of("frequencyHz", "meanLogOhm", "meanPhaseRad", "spreadLog")) {
            reference.putArray(name).add(20.0).add(2000.0);
        }
        for (String name : List.of("acousticFrequencyHz", "meanLevelDb", "spreadLevelDb")) {
            reference.putArray(name);
        }
        String path = ApiPaths.DRIVER_REFERENCES + "/REED-1";

        assertThat(api.put(path, reference).status()).isIn(200, 201);
        assertThat(api.put(path, reference).status()).isEqualTo(200);

        assertThat(api.get(path).as(PointReference.class).unitCount()).isEqualTo(3);
        assertThat(api.get(ApiPaths.REFERENCES).listOf(PointReference.class))
                .noneMatch(r -> r.cabinetModelCode().startsWith("BARE-"));
        assertThat(api.put(ApiPaths.DRIVER_REFERENCES + "/DUNE-12", reference)
                        .problem()
                        .field())
                .isEqualTo("cabinetModelCode");
        assertThat(api.get(ApiPaths.DRIVER_REFERENCES + "/DUNE-12").status()).isEqualTo(404);
    }
}
