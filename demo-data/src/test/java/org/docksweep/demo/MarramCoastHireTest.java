package org.docksweep.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.ServiceLoader;
import java.util.Set;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.DemoHouse;
import org.docksweep.contract.DemoHouseProvider;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.contract.InstalledDriver;
import org.docksweep.contract.ReturnList;
import org.docksweep.demo.physics.VirtualCabinet;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.fleet.VisualItem;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MarramCoastHireTest {
    private static final LocalDate NIGHT = LocalDate.of(2026, 3, 14);
    private static final long SEED = 4711;

    private final MarramCoastHire house = MarramCoastHire.of(SEED, NIGHT);
    private final DemoHouse papers = house.papers();

    @Test
    void isTheSameHouseForTheSameSeedAndAnotherForAnother() {
        assertThat(MarramCoastHire.of(SEED, NIGHT).papers()).isEqualTo(papers);
        assertThat(MarramCoastHire.of(SEED + 1, NIGHT).papers().arrivals()).isNotEqualTo(papers.arrivals());
    }

    @Test
    void builtTheSameUnitsForTheSameSeed() {
        AssetTag tag = papers.arrivals().get(3).label();
        Complex once =
                house.beforeHire(tag).load(firstPoint(tag)).at(100, Complex.ONE).pressurePaPerV();
        Complex again = MarramCoastHire.of(SEED, NIGHT.plusDays(9))
                .beforeHire(tag)
                .load(firstPoint(tag))
                .at(100, Complex.ONE)
                .pressurePaPerV();
        assertThat(again).isEqualTo(once);
    }

    private String firstPoint(AssetTag tag) {
        return papers.book()
                .cabinetModel(house.registeredModel(tag))
                .testPoints()
                .get(0)
                .code();
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 20, 4711})
    void bringsTheNightTheIssueAsksFor(long seed) {
        DemoHouse night = MarramCoastHire.of(seed, NIGHT).papers();
        Set<AssetTag> listed = new HashSet<>(
                night.returnList().lines().stream().map(ReturnList.Line::tag).toList());
        List<AssetTag> arrived =
                night.arrivals().stream().map(DemoHouse.Arrival::label).toList();
        assertThat(night.cabinets()).hasSize(120);
        assertThat(listed).hasSize(24);
        assertThat(arrived).hasSize(24).doesNotHaveDuplicates();
        assertThat(arrived.stream().filter(t -> !listed.contains(t))).hasSize(1);
        assertThat(listed.stream().filter(t -> !arrived.contains(t))).hasSize(1);
        assertThat(count(night, DemoHouse.Kind.HARD_FAULT)).isEqualTo(7);
        assertThat(count(night, DemoHouse.Kind.HEALTHY)).isEqualTo(13);
        assertThat(count(night, DemoHouse.Kind.WRONG_LABEL)).isEqualTo(1);
        assertThat(count(night, DemoHouse.Kind.NOT_PLUGGED)).isEqualTo(1);
        assertThat(count(night, DemoHouse.Kind.VISUAL_SAFETY)).isEqualTo(1);
        assertThat(night.ambientCelsius()).isBetween(5.0, 35.0);
    }

    private static long count(DemoHouse night, DemoHouse.Kind kind) {
        return night.arrivals().stream().filter(a -> a.truth().kind() == kind).count();
    }

    @Test
    void keepsReferenceUnitsOffTheTruckAndTheList() {
        assertThat(papers.referenceUnits()).hasSize(36).doesNotHaveDuplicates();
        assertThat(papers.arrivals()).noneMatch(a -> papers.referenceUnits().contains(a.label()));
        assertThat(papers.returnList().lines())
                .noneMatch(l -> papers.referenceUnits().contains(l.tag()));
    }

    @Test
    void namesAPositionOfTheModelForEveryFault() {
        assertThat(papers.arrivals())
                .filteredOn(a -> a.truth().kind() == DemoHouse.Kind.HARD_FAULT)
                .allSatisfy(a -> assertThat(papers.book()
                                .cabinetModel(house.registeredModel(a.label()))
                                .position(a.truth().faultPositionCode()))
                        .isNotNull());
    }

    @Test
    void hurtsNobodyBeforeTheHire() {
        assertThat(papers.arrivals())
                .allSatisfy(
                        a -> assertThat(house.beforeHire(a.label()).faults()).isEmpty());
    }

    @Test
    void putsAnotherModelUnderTheWrongLabel() {
        DemoHouse.Arrival wrong = papers.arrivals().stream()
                .filter(a -> a.truth().kind() == DemoHouse.Kind.WRONG_LABEL)
                .findFirst()
                .orElseThrow();
        assertThat(house.atReturn(wrong.label()).model().code()).isNotEqualTo(house.registeredModel(wrong.label()));
        assertThat(house.beforeHire(wrong.label()).model().code()).isEqualTo(house.registeredModel(wrong.label()));
    }

    @Test
    void showsRiggingDamageToTheHand() {
        assertThat(papers.arrivals())
                .filteredOn(a -> a.truth().kind() == DemoHouse.Kind.VISUAL_SAFETY)
                .allSatisfy(a -> assertThat(a.visualDamage()).contains(VisualItem.RIGGING));
        assertThat(papers.arrivals())
                .filteredOn(a -> a.truth().kind() == DemoHouse.Kind.HEALTHY)
                .noneMatch(a -> a.visualDamage().stream().anyMatch(VisualItem::forcesSafetyHold));
    }

    @Test
    void fitsEveryPositionWithItsDriver() {
        for (CabinetBody cabinet : papers.cabinets()) {
            assertThat(cabinet.drivers())
                    .hasSameSizeAs(
                            papers.book().cabinetModel(cabinet.modelCode()).positions())
                    .allSatisfy(d -> assertThat(d.installedOn()).isBefore(NIGHT));
        }
        assertThat(papers.cabinets().stream().filter(c -> c.status() == CabinetStatus.OUT))
                .hasSize(25);
    }

    @Test
    void tellsHistoryInOrderAndBeforeTheNight() {
        assertThat(papers.pastEvents())
                .extracting(HistoryEvent::at)
                .isSorted()
                .allSatisfy(at -> assertThat(at).isBefore(NIGHT.atStartOfDay().toInstant(java.time.ZoneOffset.UTC)));
        assertThat(papers.pastEvents()).extracting(HistoryEvent::id).doesNotHaveDuplicates();
    }

    @Test
    void movesHealthyUnitsByTemperatureOnly() {
        // copper over 5 to 35 C is -6 to +6 %; nothing near a fault hides among the healthy
        for (DemoHouse.Arrival arrival : papers.arrivals()) {
            if (arrival.truth().kind() != DemoHouse.Kind.HEALTHY) {
                continue;
            }
            String model = house.registeredModel(arrival.label());
            papers.book().cabinetModel(model).testPoints().stream()
                    .filter(p -> p.kind() == TestPointKind.TERMINALS)
                    .forEach(p -> {
                        for (double f = 1000; f < 16_000; f *= 1.2) {
                            double before = ohm(house.beforeHire(arrival.label()), p.code(), f);
                            double after = ohm(house.atReturn(arrival.label()), p.code(), f);
                            assertThat(after / before).isBetween(0.92, 1.08);
                        }
                    });
        }
    }

    private static double ohm(VirtualCabinet cabinet, String point, double frequencyHz) {
        return cabinet.load(point)
                .at(frequencyHz, new Complex(0.5))
                .impedanceOhm()
                .norm();
    }

    @Test
    void numbersEveryDriverAndDiaphragmOnce() {
        assertThat(papers.cabinets().stream().flatMap(c -> c.drivers().stream()).map(InstalledDriver::driverSerial))
                .doesNotHaveDuplicates();
        assertThat(papers.cabinets().stream()
                        .flatMap(c -> c.drivers().stream())
                        .map(InstalledDriver::diaphragmSerial)
                        .filter(s -> s != null))
                .doesNotHaveDuplicates();
    }

    @Test
    void isFoundByServiceLoader() {
        assertThat(ServiceLoader.load(DemoHouseProvider.class).findFirst())
                .get()
                .satisfies(p -> assertThat(p.house(SEED).siteName()).isEqualTo("Marram Coast Hire"));
    }
}
