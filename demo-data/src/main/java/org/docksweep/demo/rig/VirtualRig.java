package org.docksweep.demo.rig;

import java.time.Clock;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayDeque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Queue;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Function;
import org.docksweep.demo.MarramCoastHire;
import org.docksweep.demo.physics.Fault;
import org.docksweep.demo.physics.FaultKind;
import org.docksweep.demo.physics.Load;
import org.docksweep.demo.physics.PlainLoad;
import org.docksweep.demo.physics.VirtualCabinet;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.CaptureHeader;
import org.docksweep.sweep.PracticeRig;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepPlan;

/**
 * The rig at the dock of the demo house. What is plugged in is looked up in the house of the same seed, or among
 * {@link PracticeStandards}. The n-th playback of a label and test point sounds the same in every rig of equal settings.
 *
 * <p>A cabinet whose lead was not pushed home shows an open circuit until it is plugged in once more.
 */
public final class VirtualRig implements PracticeRig {
    private static final long PROGRESS_EVERY_MS = 40;

    private final RigSettings settings;
    private final Clock clock;
    private final MarramCoastHire house;
    private final CaptureRenderer renderer;
    private final double ambientCelsius;
    private final Map<AssetTag, PlainLoad> standards = PracticeStandards.all();
    private final Queue<Disturbance> disturbances;
    private final Map<String, Integer> plugs = new HashMap<>();
    private final Map<String, Integer> plays = new HashMap<>();
    private final AtomicReference<CountDownLatch> playing = new AtomicReference<>();
    private final Set<AssetTag> mended = new HashSet<>();
    private Plugged plugged;
    private long plugsOfAll;

    /** What the lead is in. */
    private record Plugged(
            String name,
            TestPointKind kind,
            Load load,
            Load failing,
            double failuresPerS,
            double contactOhm,
            double placementShiftS) {}

    /**
     * Opens a rig.
     *
     * @param settings settings
     * @param clock gives capture times and the date of the house's night
     */
    public VirtualRig(RigSettings settings, Clock clock) {
        this(settings, clock, Electronics.drawn(settings.seed()));
    }

    VirtualRig(RigSettings settings, Clock clock, Electronics electronics) {
        this.settings = settings;
        this.clock = clock;
        this.house = MarramCoastHire.of(settings.seed(), LocalDate.now(clock));
        this.disturbances = new ArrayDeque<>(settings.disturbances());
        this.ambientCelsius = settings.ambientCelsius() != null
                ? settings.ambientCelsius()
                : settings.moment() == Moment.BEFORE_HIRE ? 20 : house.ambientCelsius();
        double rate = settings.sampleRateHz();
        this.renderer = new CaptureRenderer(electronics, new Hall(settings.seed(), rate), rate);
    }

    @Override
    public String id() {
        return "virtual-" + settings.seed();
    }

    @Override
    public int sampleRateHz() {
        return settings.sampleRateHz();
    }

    @Override
    public synchronized void plug(AssetTag label, String testPointCode) {
        String name = label + "/" + testPointCode;
        int count = plugs.merge(name, 1, Integer::sum);
        PlainLoad standard = standards.get(label);
        if (standard != null) {
            double contactOhm = PracticeStandards.CONTACT_OHM + wornOhm();
            plugged = new Plugged(name, TestPointKind.TERMINALS, standard, null, 0, contactOhm, 0);
            return;
        }
        if (label.equals(PracticeStandards.KNOWN_CABINET)) {
            VirtualCabinet known = PracticeStandards.knownCabinet(house.papers().book(), ambientCelsius);
            plugged = into(name, count, known, known.model().testPoint(testPointCode));
            return;
        }
        VirtualCabinet cabinet = cabinet(label);
        TestPoint point = socket(cabinet, label, testPointCode);
        boolean misses = settings.moment() == Moment.AT_RETURN && house.firstPlugFails(label) && count == 1;
        plugged = misses ? missed(name, point) : into(name, count, cabinet, point);
    }

    @Override
    public synchronized void plugDriver(AssetTag label, String positionCode) {
        VirtualCabinet cabinet = cabinet(label);
        cabinet.model().position(positionCode);
        String name = label + "/" + positionCode + " bare";
        plugged = into(
                name,
                plugs.merge(name, 1, Integer::sum),
                cabinet,
                TestPointKind.BARE_DRIVER,
                driver -> driver.bareDriver(positionCode));
    }

    private VirtualCabinet cabinet(AssetTag label) {
        VirtualCabinet cabinet =
                settings.moment() == Moment.BEFORE_HIRE ? house.beforeHire(label) : house.atReturn(label);
        if (cabinet == null) {
            throw new IllegalArgumentException("no virtual cabinet carries the label " + label
                    + "; the house of seed " + settings.seed() + " and the standards STD-000001 to STD-000006 can be"
                    + " plugged in");
        }
        if (mended.contains(label)) {
            for (FaultKind kind : FaultKind.values()) {
                cabinet = cabinet.without(kind);
            }
        }
        return cabinet;
    }

    @Override
    public synchronized void repair(AssetTag label) {
        cabinet(label);
        mended.add(label);
    }

    /**
     * Plugs the lead into a cabinet that is not of the house: for proving runs and tests.
     *
     * @param name name of the unit; equal names and settings give equal contacts, latencies and noise
     * @param cabinet the cabinet
     * @param testPointCode test point of its model
     * @throws IllegalArgumentException if its model has no such test point
     */
    public synchronized void plug(String name, VirtualCabinet cabinet, String testPointCode) {
        TestPoint point = cabinet.model().testPoint(testPointCode);
        String unit = name + "/" + testPointCode;
        plugged = into(unit, plugs.merge(unit, 1, Integer::sum), cabinet, point);
    }

    private Plugged missed(String name, TestPoint point) {
        return new Plugged(name, point.kind(), standards.get(PracticeStandards.OPEN), null, 0, 0, 0);
    }

    private Plugged into(String name, int count, VirtualCabinet cabinet, TestPoint point) {
        return into(name, count, cabinet, point.kind(), c -> c.load(point.code()));
    }

    private Plugged into(
            String name, int count, VirtualCabinet cabinet, TestPointKind kind, Function<VirtualCabinet, Load> seen) {
        SplittableRandom random = random("plug", name, count);
        double contactOhm = Plugging.contactOhm(random) + wornOhm();
        double shiftS = Plugging.placementShiftS(random);
        Fault loose = cabinet.fault(FaultKind.INTERMITTENT);
        VirtualCabinet holding = cabinet.without(FaultKind.INTERMITTENT);
        return new Plugged(
                name,
                kind,
                seen.apply(holding),
                loose == null ? null : seen.apply(cabinet),
                loose == null ? 0 : loose.severity(),
                contactOhm,
                shiftS);
    }

    /** What the plug has more than when it was new; every push counts. */
    private double wornOhm() {
        plugsOfAll++;
        return plugsOfAll >= settings.wornFromPlug() ? settings.wornOhm() : 0;
    }

    /** The dock hand looks for the socket the label's model has; on a mislabelled cabinet the first one is used. */
    private TestPoint socket(VirtualCabinet cabinet, AssetTag label, String testPointCode) {
        boolean has =
                cabinet.model().testPoints().stream().anyMatch(p -> p.code().equals(testPointCode));
        boolean honest = cabinet.model().code().equals(house.registeredModel(label));
        if (has || honest) {
            return cabinet.model().testPoint(testPointCode);
        }
        return cabinet.model().testPoints().get(0);
    }

    @Override
    public synchronized void unplug() {
        plugged = null;
    }

    /**
     * Spoils the next playbacks, one each, after those the settings named.
     *
     * @param next what goes wrong
     */
    public synchronized void disturb(Disturbance... next) {
        disturbances.addAll(java.util.List.of(next));
    }

    @Override
    public Capture play(SweepPlan plan, TestPointKind kind, ProgressListener listener) throws RigException {
        CountDownLatch stopped = new CountDownLatch(1);
        if (!playing.compareAndSet(null, stopped)) {
            throw new RigException(RigException.Cause.REFUSED, Reason.of("rig-busy"));
        }
        try {
            return play(plan, kind, listener, stopped);
        } finally {
            playing.set(null);
        }
    }

    private Capture play(SweepPlan plan, TestPointKind kind, ProgressListener listener, CountDownLatch stopped)
            throws RigException {
        if (plan.signal().sampleRateHz() != settings.sampleRateHz()) {
            throw new RigException(
                    RigException.Cause.REFUSED,
                    Reason.of(
                            "rig-sample-rate",
                            Integer.toString(plan.signal().sampleRateHz()),
                            Integer.toString(settings.sampleRateHz())));
        }
        CaptureHeader header = new CaptureHeader(
                clock.instant().truncatedTo(ChronoUnit.MICROS),
                id(),
                kind,
                CaptureRenderer.channels(kind),
                plan,
                ambientCelsius);
        Playback playback = next(kind);
        long startNs = System.nanoTime();
        listener.progressed(0);
        float[][] samples = renderer.render(plan, kind, playback);
        waitFor(plan, startNs, listener, stopped);
        return new Capture(header, samples);
    }

    private synchronized Playback next(TestPointKind kind) throws RigException {
        Plugged now = plugged != null
                ? plugged
                : new Plugged("nothing", kind, standards.get(PracticeStandards.OPEN), null, 0, 0, 0);
        if (now.kind() != kind) {
            throw new RigException(
                    RigException.Cause.REFUSED,
                    Reason.of("rig-wrong-lead", kind.name(), now.kind().name()));
        }
        int count = plays.merge(now.name(), 1, Integer::sum);
        SplittableRandom random = random("play", now.name(), count);
        Disturbance disturbance = disturbances.isEmpty() ? Disturbance.NONE : disturbances.poll();
        return new Playback(
                now.load(),
                now.failing(),
                now.failuresPerS(),
                now.contactOhm(),
                now.placementShiftS(),
                Plugging.latencyS(random),
                settings.hallNoiseDb(),
                settings.knocksPerS(),
                disturbance,
                random);
    }

    private SplittableRandom random(String what, String name, int count) {
        long key = (what + name + settings.moment()).hashCode();
        return new SplittableRandom(settings.seed() * 0x9E3779B97F4A7C15L + key * 0xBF58476D1CE4E5B9L + count);
    }

    private void waitFor(SweepPlan plan, long startNs, ProgressListener listener, CountDownLatch stopped)
            throws RigException {
        long wholeNs = settings.realTime() ? (long) (1e9 * plan.totalFrames() / settings.sampleRateHz()) : 0;
        long doneNs = System.nanoTime() - startNs;
        try {
            while (doneNs < wholeNs) {
                long sliceMs = Math.min(PROGRESS_EVERY_MS, 1 + (wholeNs - doneNs) / 1_000_000);
                if (stopped.await(sliceMs, TimeUnit.MILLISECONDS)) {
                    break;
                }
                doneNs = System.nanoTime() - startNs;
                listener.progressed(Math.min(1, doneNs / (double) wholeNs));
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            stopped.countDown();
        }
        if (stopped.getCount() == 0) {
            throw new RigException(RigException.Cause.STOPPED, Reason.of("rig-stopped"));
        }
        listener.progressed(1);
    }

    @Override
    public void stop() {
        CountDownLatch current = playing.get();
        if (current != null) {
            current.countDown();
        }
    }

    @Override
    public void close() {
        stop();
    }
}
