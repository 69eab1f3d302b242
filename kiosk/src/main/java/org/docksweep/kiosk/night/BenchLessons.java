package org.docksweep.kiosk.night;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.DemoHouse;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.BareDriver;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverBenchData;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.DriverPosition;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.TestPoint;
import org.docksweep.gate.PointReference;
import org.docksweep.gate.ReferenceTeacher;
import org.docksweep.kiosk.dock.Gate;
import org.docksweep.kiosk.rig.Rigs;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.CurveCorrection;
import org.docksweep.sweep.PracticeRig;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepAnalysis;

/**
 * What the bench of the house did before the hire: of every driver model whose bench level is known, five known-good
 * drivers were taken out of their cabinets and swept on the bench rig.
 */
final class BenchLessons {
    /** Known-good drivers per model. */
    static final int DRIVERS = 5;

    private static final int MAX_ATTEMPTS = 3;

    private final DemoHouse house;
    private final Gate gate;
    private final CurveCorrection correction;
    private final Map<String, String> rigSettings;

    /** A known-good driver in its cabinet. */
    private record Known(AssetTag tag, String positionCode) {}

    BenchLessons(DemoHouse house, Gate gate, CurveCorrection correction, Map<String, String> rigSettings) {
        this.house = house;
        this.gate = gate;
        this.correction = correction;
        this.rigSettings = rigSettings;
    }

    /** References of the bare drivers; driver models run beside each other, each on a rig of its own. */
    List<PointReference> teach() throws RigException {
        ExecutorService pool =
                Executors.newFixedThreadPool(Math.max(1, Runtime.getRuntime().availableProcessors()));
        try {
            List<Future<PointReference>> lessons = new ArrayList<>();
            for (DriverBenchData data : house.bench().benchData()) {
                if (data.benchLevelMask() != null) {
                    Callable<PointReference> lesson = () -> teach(data);
                    lessons.add(pool.submit(lesson));
                }
            }
            List<PointReference> references = new ArrayList<>();
            for (Future<PointReference> lesson : lessons) {
                references.add(lesson.get());
            }
            return references;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("stopped while the bench learned its drivers", e);
        } catch (ExecutionException e) {
            if (e.getCause() instanceof RigException rig) {
                throw rig;
            }
            throw new IllegalStateException(
                    "the bench could not learn its drivers: " + e.getCause().getMessage(), e.getCause());
        } finally {
            pool.shutdownNow();
        }
    }

    private PointReference teach(DriverBenchData data) throws RigException {
        DriverModel driver = house.book().driverModel(data.driverModelCode());
        ModelBook bare = BareDriver.book(List.of(driver), Map.of(driver.code(), data.benchLevelMask()));
        CabinetModel model = bare.cabinetModel(BareDriver.modelCode(driver.code()));
        List<ReferenceTeacher.Unit> units = new ArrayList<>();
        try (PracticeRig rig = (PracticeRig) Rigs.open("virtual", rigSettings)) {
            for (Known known : knownGood(driver.code())) {
                units.add(sweep(rig, known, model.testPoint(BareDriver.TEST_POINT)));
            }
        }
        return ReferenceTeacher.teach(bare, model.code(), BareDriver.TEST_POINT, units);
    }

    private List<Known> knownGood(String driverModelCode) {
        List<Known> known = new ArrayList<>();
        for (CabinetBody cabinet : house.cabinets()) {
            if (house.referenceUnits().contains(cabinet.tag()) && known.size() < DRIVERS) {
                house.book().cabinetModel(cabinet.modelCode()).positions().stream()
                        .filter(p -> p.driverModelCode().equals(driverModelCode))
                        .map(DriverPosition::code)
                        .findFirst()
                        .ifPresent(position -> known.add(new Known(cabinet.tag(), position)));
            }
        }
        return known;
    }

    private ReferenceTeacher.Unit sweep(PracticeRig rig, Known known, TestPoint point) throws RigException {
        for (int attempt = 1; attempt <= MAX_ATTEMPTS; attempt++) {
            rig.plugDriver(known.tag(), known.positionCode());
            Capture capture = rig.play(gate.sweep(point, rig.sampleRateHz()), point.kind(), share -> {});
            SweepAnalysis analysis = gate.analyse(capture);
            if (analysis.clean() && analysis.load() == SweepAnalysis.Load.PRESENT) {
                return new ReferenceTeacher.Unit(
                        correction.correct(analysis.impedance()),
                        analysis.acoustic(),
                        capture.header().ambientCelsius());
            }
        }
        throw new IllegalStateException(
                "the bare driver of " + known.tag() + " " + known.positionCode() + " could not be swept");
    }
}
