package org.docksweep.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.docksweep.contract.DemoHouse;
import org.docksweep.contract.StockMoveBody;
import org.docksweep.fleet.BareDriver;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverBenchData;
import org.docksweep.fleet.DriverKind;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.NetworkElement;
import org.docksweep.fleet.Part;
import org.docksweep.fleet.PartFit;
import org.docksweep.fleet.PartKind;
import org.docksweep.fleet.ProcedureCards;
import org.docksweep.fleet.ProcedurePurpose;
import org.junit.jupiter.api.Test;

class DemoBenchTest {
    private static final LocalDate NIGHT = LocalDate.of(2026, 3, 14);

    private final DemoHouse house = MarramCoastHire.of(4711, NIGHT).papers();
    private final ModelBook book = house.book();
    private final Map<String, Part> parts =
            house.bench().parts().stream().collect(Collectors.toMap(Part::number, Function.identity()));

    @Test
    void knowsTheNumbersOfEveryDriverAndNoTwoAreAlike() {
        Map<String, DriverBenchData> numbers = house.bench().benchData().stream()
                .collect(Collectors.toMap(DriverBenchData::driverModelCode, Function.identity()));

        assertThat(numbers.keySet())
                .isEqualTo(book.driverModels().stream().map(DriverModel::code).collect(Collectors.toSet()));
        assertThat(numbers.values().stream().map(DriverBenchData::fasteners).toList())
                .doesNotContainNull()
                .doesNotHaveDuplicates();
        assertThat(numbers.values().stream()
                        .map(DriverBenchData::locatingFeatures)
                        .toList())
                .doesNotHaveDuplicates();
        assertThat(numbers.values()).anyMatch(d -> d.gap() != null && d.gap().fluidPartNumber() != null);
        for (DriverModel driver : book.driverModels()) {
            ProcedurePurpose purpose = driver.kind() == DriverKind.COMPRESSION
                    ? ProcedurePurpose.DIAPHRAGM_REPLACEMENT
                    : ProcedurePurpose.RECONE;
            DriverBenchData data = numbers.get(driver.code());
            assertThat(ProcedureCards.of(purpose, driver, data).steps())
                    .as(driver.code())
                    .anyMatch(s -> s.numbers().stream().anyMatch(n -> n.key().equals("bench-number-tightening")));
            BareDriver.model(driver, data.benchLevelMask());
        }
    }

    @Test
    void keepsAFittingPartForEveryDriverAndOneThatLooksLikeItButDoesNot() {
        for (DriverModel driver : book.driverModels()) {
            List<Part> own =
                    driver.diaphragmPartNumbers().stream().map(parts::get).toList();
            assertThat(own).as(driver.code()).doesNotContainNull();
            assertThat(own)
                    .as(driver.code())
                    .anyMatch(p -> PartFit.refusal(p, driver).isEmpty());
            if (driver.kind() == DriverKind.COMPRESSION) {
                assertThat(own)
                        .as(driver.code())
                        .anyMatch(p -> PartFit.refusal(p, driver)
                                .filter(r -> r.key().equals("part-fit-wrong-impedance"))
                                .isPresent());
            }
        }
    }

    @Test
    void keepsCrossoverPartsThatFitByValue() {
        CabinetModel spindrift = book.cabinetModel("SPIN12");
        Part capacitor = parts.get("C-8U2-250");

        assertThat(PartFit.refusal(capacitor, place(spindrift, "C1"))).isEmpty();
        assertThat(PartFit.refusal(capacitor, place(spindrift, "C2"))
                        .orElseThrow()
                        .arguments())
                .containsExactly("C-8U2-250", "8.2 µF", "C2", "10 µF");
        assertThat(PartFit.refusal(capacitor, place(spindrift, "L1"))
                        .orElseThrow()
                        .key())
                .isEqualTo("part-fit-wrong-element");
        assertThat(PartFit.refusal(capacitor, place(spindrift, "C9"))
                        .orElseThrow()
                        .key())
                .isEqualTo("part-fit-no-element");
        Set<String> values = spindrift.testPoint("IN").elements().stream()
                .filter(e -> !(e instanceof NetworkElement.Driver))
                .map(NetworkElement::id)
                .collect(Collectors.toSet());
        assertThat(values).contains("C1", "C2", "L1");
    }

    private static PartFit.Place place(CabinetModel model, String element) {
        return new PartFit.Place(model, null, null, element);
    }

    @Test
    void hasSerialsForEveryPieceThatCarriesOne() {
        assertThat(house.bench().stock()).isNotEmpty();
        for (StockMoveBody move : house.bench().stock()) {
            Part part = parts.get(move.partNumber());
            assertThat(move.serials()).as(part.number()).hasSize(part.serialised() ? move.quantity() : 0);
            assertThat(move.serials()).doesNotHaveDuplicates();
        }
        assertThat(parts.values()).extracting(Part::kind).contains(PartKind.DIAPHRAGM, PartKind.DRIVER_UNIT);
    }
}
