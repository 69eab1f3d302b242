package org.docksweep.kiosk.night;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.DemoHouse;
import org.docksweep.contract.ReturnList;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.TestPoint;
import org.docksweep.gate.Baseline;
import org.docksweep.gate.PointReference;
import org.docksweep.gate.ReferenceTeacher;
import org.docksweep.kiosk.dock.Gate;
import org.docksweep.kiosk.rig.Rigs;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.CurveCorrection;
import org.docksweep.sweep.ImpedanceCurve;
import org.docksweep.sweep.PracticeRig;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepAnalysis;

/**
 * What the house did before the hire: known-good units swept to teach the references, and the cabinets that go out
 * swept for their baselines. Real sweeps through the same measurement path as the night's.
 */
final class Commissioning {
    /** Heap for a virtual rig and the analysis of what it captures: two of them fill 240 MB. */
    private static final long RIG_BYTES = 160L << 20;

    private static final int MAX_ATTEMPTS = 3;

    private final DemoHouse house;
    private final Gate gate;
    private final CurveCorrection correction;
    private final Map<String, String> rigSettings;

    /**
     * What came of it.
     *
     * @param references references of all models
     * @param baselines baselines of the cabinets on the return list
     * @param sweeps sweeps made
     */
    record Result(List<PointReference> references, List<Baseline> baselines, int sweeps) {}

    /** Curves of one unit at one test point. */
    private record Swept(AssetTag tag, String modelCode, String point, Baseline curves) {}

    Commissioning(DemoHouse house, Gate gate, CurveCorrection correction, Map<String, String> rigSettings) {
        this.house = house;
        this.gate = gate;
        this.correction = correction;
        this.rigSettings = rigSettings;
    }

    Result run() throws RigException {
        List<AssetTag> units = new ArrayList<>(house.referenceUnits());
        house.returnList().lines().stream().map(ReturnList.Line::tag).forEach(units::add);
        List<Swept> swept = sweepAll(units);
        Map<String, List<Swept>> byPoint = new LinkedHashMap<>();
        for (Swept s : swept) {
            if (house.referenceUnits().contains(s.tag())) {
                byPoint.computeIfAbsent(s.modelCode() + " " + s.point(), k -> new ArrayList<>())
                        .add(s);
            }
        }
        List<PointReference> references =
                byPoint.values().stream().map(this::teach).toList();
        List<Baseline> baselines = swept.stream()
                .filter(s -> !house.referenceUnits().contains(s.tag()))
                .map(Swept::curves)
                .toList();
        return new Result(references, baselines, swept.size());
    }

    private PointReference teach(List<Swept> units) {
        List<ReferenceTeacher.Unit> lessons = units.stream()
                .map(s -> new ReferenceTeacher.Unit(
                        s.curves().impedance(),
                        s.curves().acoustic(),
                        s.curves().ambientCelsius()))
                .toList();
        return ReferenceTeacher.teach(
                house.book(), units.get(0).modelCode(), units.get(0).point(), lessons);
    }

    /** One rig per core, as far as the memory goes: what a virtual rig captures depends on the unit and not on the order. */
    private List<Swept> sweepAll(List<AssetTag> units) throws RigException {
        Runtime runtime = Runtime.getRuntime();
        int rigs = (int) Math.min(runtime.availableProcessors(), runtime.maxMemory() / RIG_BYTES);
        int workers = Math.max(1, Math.min(rigs, units.size()));
        ExecutorService pool = Executors.newFixedThreadPool(workers);
        try {
            List<Future<List<Swept>>> parts = new ArrayList<>();
            for (int w = 0; w < workers; w++) {
                int first = w;
                Callable<List<Swept>> work = () -> sweepEvery(units, first, workers);
                parts.add(pool.submit(work));
            }
            List<Swept> all = new ArrayList<>();
            for (Future<List<Swept>> part : parts) {
                all.addAll(part.get());
            }
            all.sort((a, b) -> a.tag().compareTo(b.tag()));
            return all;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("stopped while commissioning the house", e);
        } catch (ExecutionException e) {
            if (e.getCause() instanceof RigException rig) {
                throw rig;
            }
            throw new IllegalStateException(
                    "commissioning failed: " + e.getCause().getMessage(), e.getCause());
        } finally {
            pool.shutdownNow();
        }
    }

    private List<Swept> sweepEvery(List<AssetTag> units, int first, int step) throws RigException {
        List<Swept> swept = new ArrayList<>();
        try (PracticeRig rig = (PracticeRig) Rigs.open("virtual", rigSettings)) {
            for (int i = first; i < units.size(); i += step) {
                AssetTag tag = units.get(i);
                CabinetModel model = house.book().cabinetModel(cabinet(tag).modelCode());
                for (TestPoint point : model.testPoints()) {
                    swept.add(new Swept(tag, model.code(), point.code(), sweep(rig, tag, point)));
                }
            }
        }
        return swept;
    }

    private CabinetBody cabinet(AssetTag tag) {
        return house.cabinets().stream()
                .filter(c -> c.tag().equals(tag))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("the house owns no cabinet " + tag));
    }

    private Baseline sweep(PracticeRig rig, AssetTag tag, TestPoint point) throws RigException {
        SweepAnalysis analysis = null;
        for (int attempt = 1; attempt <= MAX_ATTEMPTS; attempt++) {
            rig.plug(tag, point.code());
            Capture capture = rig.play(gate.sweep(point, rig.sampleRateHz()), point.kind(), share -> {});
            analysis = gate.analyse(capture);
            if (analysis.clean() && analysis.load() != SweepAnalysis.Load.OPEN) {
                ImpedanceCurve impedance =
                        analysis.impedance() == null ? null : correction.correct(analysis.impedance());
                return new Baseline(
                        tag,
                        point.code(),
                        capture.header().capturedAt(),
                        capture.header().ambientCelsius(),
                        impedance,
                        analysis.acoustic());
            }
        }
        throw new IllegalStateException("cabinet " + tag + " could not be swept before the hire: " + analysis.issues());
    }
}
