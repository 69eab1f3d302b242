package org.docksweep.demo.rig;

import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.Function;
import org.docksweep.contract.ProvingRig;
import org.docksweep.contract.ProvingUnit;
import org.docksweep.demo.physics.Load;
import org.docksweep.demo.physics.VirtualCabinet;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.CaptureHeader;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepPlan;

/**
 * A rig that any virtual cabinet can be plugged into, not in real time. The n-th playback of an occasion sounds the same
 * in every rig of equal seed.
 */
final class VirtualProvingRig implements ProvingRig {
    private static final int RATE_HZ = 48_000;
    private static final double STANDARDS_CELSIUS = 20;
    private static final double STANDARDS_NOISE_DB = 40;
    private static final Instant WHEN = Instant.parse("2026-03-14T01:30:00Z");

    private final long seed;
    private final CaptureRenderer renderer;
    private final Function<ProvingUnit, VirtualCabinet> cabinets;
    private final Map<AssetTag, ? extends Load> standards = PracticeStandards.all();
    private final Map<String, Integer> plays = new HashMap<>();
    private Plugged plugged;

    /** What the lead is in. */
    private record Plugged(
            String name,
            TestPointKind kind,
            Load load,
            double contactOhm,
            double placementShiftS,
            double ambientCelsius,
            double hallNoiseDb) {}

    VirtualProvingRig(long seed, Electronics electronics, Function<ProvingUnit, VirtualCabinet> cabinets) {
        this.seed = seed;
        this.renderer = new CaptureRenderer(electronics, new Hall(seed, RATE_HZ), RATE_HZ);
        this.cabinets = cabinets;
    }

    @Override
    public String id() {
        return "proving-" + seed;
    }

    @Override
    public int sampleRateHz() {
        return RATE_HZ;
    }

    @Override
    public void plug(AssetTag label, String testPointCode) {
        Load standard = standards.get(label);
        if (standard == null) {
            throw new IllegalArgumentException(
                    label + " is not a standard of the proving rig; expected STD-000001 to STD-000005");
        }
        plugged = new Plugged(
                label.value(),
                TestPointKind.TERMINALS,
                standard,
                PracticeStandards.CONTACT_OHM,
                0,
                STANDARDS_CELSIUS,
                STANDARDS_NOISE_DB);
    }

    @Override
    public void plug(String occasion, ProvingUnit unit, String testPointCode) {
        VirtualCabinet cabinet = cabinets.apply(unit);
        TestPoint point = socket(cabinet.model(), testPointCode);
        String name = occasion + "/" + testPointCode;
        plugged = new Plugged(
                name,
                point.kind(),
                cabinet.load(point.code()),
                Plugging.contactOhm(random("plug", name, 0)),
                Plugging.placementShiftS(random("place", occasion, 0)),
                unit.climate().ambientCelsius(),
                unit.climate().hallNoiseDb());
    }

    private static TestPoint socket(CabinetModel model, String testPointCode) {
        return model.testPoints().stream()
                .filter(p -> p.code().equals(testPointCode))
                .findFirst()
                .orElse(model.testPoints().get(0));
    }

    @Override
    public void plugDriver(AssetTag label, String positionCode) {
        throw new IllegalArgumentException(label + ": the proving rig knows whole cabinets only");
    }

    @Override
    public void repair(AssetTag label) {
        throw new IllegalArgumentException(
                label + " cannot be repaired: the proving rig knows cabinets by description");
    }

    @Override
    public void unplug() {
        plugged = null;
    }

    @Override
    public Capture play(SweepPlan plan, TestPointKind kind, ProgressListener listener) throws RigException {
        if (plugged == null) {
            throw new IllegalStateException("nothing is plugged into the proving rig; plug a unit or a standard first");
        }
        if (plugged.kind() != kind) {
            throw new RigException(
                    RigException.Cause.REFUSED,
                    Reason.of("rig-wrong-lead", kind.name(), plugged.kind().name()));
        }
        SplittableRandom random = random("play", plugged.name(), plays.merge(plugged.name(), 1, Integer::sum));
        Playback playback = new Playback(
                plugged.load(),
                null,
                0,
                plugged.contactOhm(),
                plugged.placementShiftS(),
                Plugging.latencyS(random),
                plugged.hallNoiseDb(),
                0,
                Disturbance.NONE,
                random);
        CaptureHeader header =
                new CaptureHeader(WHEN, id(), kind, CaptureRenderer.channels(kind), plan, plugged.ambientCelsius());
        return new Capture(header, renderer.render(plan, kind, playback));
    }

    private SplittableRandom random(String what, String name, int count) {
        long key = (what + name).hashCode();
        return new SplittableRandom(seed * 0x9E3779B97F4A7C15L + key * 0xBF58476D1CE4E5B9L + count);
    }

    @Override
    public void stop() {
        // Nothing plays while another thread could ask for it: this rig takes no real time.
    }

    @Override
    public void close() {
        unplug();
    }
}
