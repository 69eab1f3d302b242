package org.docksweep.demo.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.ServiceLoader;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.docksweep.contract.DemoHouse;
import org.docksweep.demo.MarramCoastHire;
import org.docksweep.demo.physics.Load;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.ChannelRole;
import org.docksweep.sweep.PracticeRig;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.RigProvider;
import org.docksweep.sweep.SweepPlan;
import org.docksweep.sweep.SweepSignal;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.json.JsonMapper;

class VirtualRigTest {
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-03-14T01:30:00Z"), ZoneOffset.UTC);
    private static final long SEED = 20260314;
    private static final DemoHouse HOUSE =
            MarramCoastHire.of(SEED, LocalDate.now(CLOCK)).papers();

    private static VirtualRig rig(String... keysAndValues) {
        Map<String, String> settings = new java.util.HashMap<>(Map.of("seed", Long.toString(SEED)));
        for (int i = 0; i < keysAndValues.length; i += 2) {
            settings.put(keysAndValues[i], keysAndValues[i + 1]);
        }
        return new VirtualRig(RigSettings.of(settings), CLOCK);
    }

    private static SweepPlan plan(TestPoint point, double seconds) {
        SweepSignal signal = SweepSignal.synchronised(
                point.levelMask().lowestHz(), point.levelMask().highestHz(), seconds, 48_000, point.levelMask());
        return new SweepPlan(signal, 0.3, 0.4, 1);
    }

    private static TestPoint point(String modelCode, String code) {
        return HOUSE.book().cabinetModel(modelCode).testPoint(code);
    }

    private static AssetTag reference(String modelCode) {
        return HOUSE.referenceUnits().stream()
                .filter(t -> HOUSE.cabinets().stream()
                        .anyMatch(c -> c.tag().equals(t) && c.modelCode().equals(modelCode)))
                .findFirst()
                .orElseThrow();
    }

    private static Complex measuredOhm(Capture capture, double frequencyHz) {
        Complex v = Dft.at(capture.fullScale(ChannelRole.VOLTAGE), 48_000, frequencyHz)
                .multiply(capture.unitsPerFullScale(ChannelRole.VOLTAGE));
        Complex i = Dft.at(capture.fullScale(ChannelRole.CURRENT), 48_000, frequencyHz)
                .multiply(capture.unitsPerFullScale(ChannelRole.CURRENT));
        return v.divide(i);
    }

    @Test
    void rendersVoltageOverCurrentAsTheSolvedImpedance() throws RigException {
        // grid interpolation and 24-bit steps of the rendering, nothing else
        double relative = 2e-3;
        VirtualRig rig = new VirtualRig(
                RigSettings.of(Map.of("seed", Long.toString(SEED), "moment", "before-hire")),
                CLOCK,
                Electronics.ideal());
        for (String model : List.of("SPIN12", "UNDR215", "HEAD3")) {
            AssetTag tag = reference(model);
            rig.plug(tag, "IN");
            Capture capture = rig.play(plan(point(model, "IN"), 3), TestPointKind.TERMINALS, s -> {});
            Load load = MarramCoastHire.of(SEED, LocalDate.now(CLOCK))
                    .beforeHire(tag)
                    .load("IN");
            double contactOhm = contact(capture, load);
            for (double f : new double[] {25, 31.3, 47.7, 63, 81, 250, 777, 1600, 3500}) {
                Complex expected = load.at(f, new Complex(0.5)).impedanceOhm().add(contactOhm);
                assertThat(measuredOhm(capture, f).subtract(expected).norm() / expected.norm())
                        .as("%s at %s Hz", model, f)
                        .isLessThan(relative);
            }
        }
    }

    /** The contact drawn for this plug-in, read at one frequency; it must be a believable resistance. */
    private static double contact(Capture capture, Load load) {
        double contactOhm = measuredOhm(capture, 200)
                .subtract(load.at(200, new Complex(0.5)).impedanceOhm())
                .getRealPart();
        assertThat(contactOhm).isBetween(0.02, 0.2);
        return contactOhm;
    }

    @Test
    void readsStandardsOnlyWithItsOwnErrorsUntilCalibrated() throws RigException {
        VirtualRig rig = rig();
        SweepPlan plan = plan(point("SPIN12", "IN"), 2);
        rig.plug(PracticeStandards.LOAD, "IN");
        Complex load = measuredOhm(rig.play(plan, TestPointKind.TERMINALS, s -> {}), 1000);
        rig.plug(PracticeStandards.SHORT, "IN");
        Complex shorted = measuredOhm(rig.play(plan, TestPointKind.TERMINALS, s -> {}), 1000);
        rig.plug(PracticeStandards.OPEN, "IN");
        Complex open = measuredOhm(rig.play(plan, TestPointKind.TERMINALS, s -> {}), 1000);
        rig.plug(PracticeStandards.CHECK_RESISTOR, "IN");
        Complex check = measuredOhm(rig.play(plan, TestPointKind.TERMINALS, s -> {}), 1000);

        assertThat(load.norm()).as("uncalibrated reading of 10 ohm").isNotCloseTo(10, within(0.05));
        // open, short and load compensation by its bilinear formula
        Complex corrected = open.subtract(load)
                .multiply(check.subtract(shorted))
                .divide(load.subtract(shorted).multiply(open.subtract(check)))
                .multiply(10);
        assertThat(corrected.getRealPart()).isCloseTo(4.7, within(0.005 * 4.7 + 0.02));
        assertThat(corrected.getImaginaryPart()).isCloseTo(0, within(0.02));
    }

    @Test
    void keepsEveryHonestCaptureOfTheNightBelowFullScale() throws RigException {
        VirtualRig rig = rig();
        MarramCoastHire house = MarramCoastHire.of(SEED, LocalDate.now(CLOCK));
        for (DemoHouse.Arrival arrival : HOUSE.arrivals()) {
            for (TestPoint point : HOUSE.book()
                    .cabinetModel(house.registeredModel(arrival.label()))
                    .testPoints()) {
                rig.plug(arrival.label(), point.code());
                Capture capture = rig.play(plan(point, 1), point.kind(), s -> {});
                capture.header()
                        .channels()
                        .forEach(c -> assertThat(peak(capture, c.role()))
                                .as("%s of %s", c.role(), arrival.truth().words())
                                .isLessThan(0.6f));
            }
        }
    }

    private static float peak(Capture capture, ChannelRole role) {
        float peak = 0;
        for (float sample : capture.fullScale(role)) {
            peak = Math.max(peak, Math.abs(sample));
        }
        return peak;
    }

    @Test
    void tellsNothingOfCabinetOrTruthInTheHeader() throws RigException {
        VirtualRig rig = rig();
        JsonMapper json = new JsonMapper();
        DemoHouse.Arrival faulty = HOUSE.arrivals().stream()
                .filter(a -> a.truth().kind() == DemoHouse.Kind.HARD_FAULT)
                .filter(a -> modelOf(a.label()).equals("SPIN12"))
                .findFirst()
                .orElseThrow();
        DemoHouse.Arrival healthy = HOUSE.arrivals().stream()
                .filter(a -> a.truth().kind() == DemoHouse.Kind.HEALTHY)
                .filter(a -> modelOf(a.label()).equals("SPIN12"))
                .findFirst()
                .orElseThrow();
        SweepPlan plan = plan(point("SPIN12", "IN"), 1);
        rig.plug(faulty.label(), "IN");
        String bad = json.writeValueAsString(
                rig.play(plan, TestPointKind.TERMINALS, s -> {}).header());
        rig.plug(healthy.label(), "IN");
        String good = json.writeValueAsString(
                rig.play(plan, TestPointKind.TERMINALS, s -> {}).header());
        assertThat(bad).isEqualTo(good);
    }

    private static String modelOf(AssetTag tag) {
        return HOUSE.cabinets().stream()
                .filter(c -> c.tag().equals(tag))
                .findFirst()
                .orElseThrow()
                .modelCode();
    }

    @Test
    void repeatsItselfToTheLastBitForEqualSettings() throws RigException {
        AssetTag tag = reference("PEBL8");
        SweepPlan plan = plan(point("PEBL8", "IN"), 0.5);
        VirtualRig first = rig();
        VirtualRig second = rig();
        first.plug(tag, "IN");
        second.plug(tag, "IN");
        Capture one = first.play(plan, TestPointKind.TERMINALS, s -> {});
        Capture same = second.play(plan, TestPointKind.TERMINALS, s -> {});
        Capture next = first.play(plan, TestPointKind.TERMINALS, s -> {});
        for (ChannelRole role : List.of(ChannelRole.VOLTAGE, ChannelRole.CURRENT, ChannelRole.MICROPHONE)) {
            assertThat(one.fullScale(role)).containsExactly(same.fullScale(role));
            assertThat(one.fullScale(role)).isNotEqualTo(next.fullScale(role));
        }
    }

    @Test
    void showsNoCurrentWhenNothingIsPluggedIn() throws RigException {
        VirtualRig rig = rig();
        Capture capture = rig.play(plan(point("SPIN12", "IN"), 0.5), TestPointKind.TERMINALS, s -> {});
        assertThat(peak(capture, ChannelRole.CURRENT)).isLessThan(0.001f);
        assertThat(peak(capture, ChannelRole.VOLTAGE)).isGreaterThan(0.1f);
    }

    @Test
    void findsTheLeadHomeOnTheSecondPlugOnly() throws RigException {
        AssetTag loose = HOUSE.arrivals().stream()
                .filter(a -> a.truth().kind() == DemoHouse.Kind.NOT_PLUGGED)
                .findFirst()
                .orElseThrow()
                .label();
        VirtualRig rig = rig();
        SweepPlan plan = plan(point("SPIN12", "IN"), 0.5);
        rig.plug(loose, "IN");
        assertThat(peak(rig.play(plan, TestPointKind.TERMINALS, s -> {}), ChannelRole.CURRENT))
                .isLessThan(0.001f);
        rig.plug(loose, "IN");
        assertThat(peak(rig.play(plan, TestPointKind.TERMINALS, s -> {}), ChannelRole.CURRENT))
                .isGreaterThan(0.02f);
    }

    @Test
    void spoilsCapturesAsAsked() throws RigException {
        AssetTag tag = reference("SPIN12");
        SweepPlan plan = plan(point("SPIN12", "IN"), 1);
        VirtualRig rig = rig("disturbances", "clip, mic-unplugged");
        rig.disturb(Disturbance.SILENT, Disturbance.SHORT, Disturbance.CURRENT_DEAD);
        rig.plug(tag, "IN");
        List<Capture> captures = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            captures.add(rig.play(plan, TestPointKind.TERMINALS, s -> {}));
        }
        assertThat(peak(captures.get(0), ChannelRole.VOLTAGE)).isGreaterThan(0.9999f);
        assertThat(peak(captures.get(1), ChannelRole.MICROPHONE)).isLessThan(0.001f);
        assertThat(peak(captures.get(2), ChannelRole.VOLTAGE)).isLessThan(0.001f);
        assertThat(captures.get(3).frames()).isLessThan(plan.totalFrames());
        assertThat(peak(captures.get(4), ChannelRole.CURRENT)).isLessThan(0.001f);
        assertThat(peak(captures.get(5), ChannelRole.CURRENT)).isBetween(0.02f, 0.6f);
    }

    @Test
    void capturesLineInputsWithoutACurrentChannel() throws RigException {
        AssetTag tag = reference("SALT12A");
        VirtualRig rig = rig();
        rig.plug(tag, "LINE");
        Capture capture = rig.play(plan(point("SALT12A", "LINE"), 1), TestPointKind.LINE_INPUT, s -> {});
        assertThat(capture.has(ChannelRole.CURRENT)).isFalse();
        assertThat(peak(capture, ChannelRole.MICROPHONE)).isGreaterThan(0.02f);
    }

    @Test
    void stopsInTheMiddleOfARealTimePlayback() throws Exception {
        VirtualRig rig = rig("realTime", "true");
        rig.plug(reference("SPIN12"), "IN");
        CountDownLatch underWay = new CountDownLatch(1);
        CompletableFuture<Throwable> ended = CompletableFuture.supplyAsync(() -> {
            try {
                rig.play(plan(point("SPIN12", "IN"), 30), TestPointKind.TERMINALS, s -> {
                    if (s > 0) {
                        underWay.countDown();
                    }
                });
                return null;
            } catch (RigException e) {
                return e;
            }
        });
        assertThat(underWay.await(20, TimeUnit.SECONDS)).isTrue();
        rig.stop();
        assertThat(ended.get(5, TimeUnit.SECONDS))
                .isInstanceOfSatisfying(
                        RigException.class, e -> assertThat(e.kind()).isEqualTo(RigException.Cause.STOPPED));
    }

    @Test
    void reportsProgressFromStartToEnd() throws RigException {
        VirtualRig rig = rig();
        List<Double> shares = new ArrayList<>();
        rig.play(plan(point("SPIN12", "IN"), 0.5), TestPointKind.TERMINALS, shares::add);
        assertThat(shares).startsWith(0.0).endsWith(1.0).isSorted();
    }

    @Test
    void refusesALeadOfAnotherKind() {
        VirtualRig rig = rig();
        rig.plug(reference("SALT12A"), "LINE");
        assertThatThrownBy(() -> rig.play(plan(point("SPIN12", "IN"), 0.5), TestPointKind.TERMINALS, s -> {}))
                .isInstanceOfSatisfying(
                        RigException.class, e -> assertThat(e.kind()).isEqualTo(RigException.Cause.REFUSED));
    }

    @Test
    void refusesLabelsAndSocketsThatDoNotExist() {
        VirtualRig rig = rig();
        assertThatThrownBy(() -> rig.plug(new AssetTag("MCH-999999"), "IN"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("MCH-999999");
        AssetTag tag = reference("SPIN12");
        assertThatThrownBy(() -> rig.plug(tag, "REAR"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("REAR");
    }

    @Test
    void isFoundByItsProviderName() throws RigException {
        RigProvider provider = ServiceLoader.load(RigProvider.class).stream()
                .map(ServiceLoader.Provider::get)
                .filter(p -> p.name().equals("virtual"))
                .findFirst()
                .orElseThrow();
        try (PracticeRig rig = (PracticeRig) provider.open(Map.of("seed", "7", "sampleRateHz", "48000"))) {
            assertThat(rig.id()).isEqualTo("virtual-7");
        }
        assertThatThrownBy(() -> provider.open(Map.of("moment", "yesterday")))
                .isInstanceOf(RigException.class)
                .hasMessageContaining("yesterday");
    }
}
