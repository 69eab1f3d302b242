package org.docksweep.kiosk.teaching;

import java.net.URI;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.ServiceLoader;
import java.util.function.Predicate;
import org.docksweep.contract.DemoHouse;
import org.docksweep.contract.DemoHouseProvider;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.Reason;
import org.docksweep.gate.LimitSet;
import org.docksweep.kiosk.dock.DockParts;
import org.docksweep.kiosk.dock.DockSettings;
import org.docksweep.kiosk.dock.Link;
import org.docksweep.kiosk.dock.RealGate;
import org.docksweep.kiosk.fleet.LocalFleet;
import org.docksweep.kiosk.printing.PaperDesk;
import org.docksweep.kiosk.rig.Lead;
import org.docksweep.kiosk.rig.RecordingKeeper;
import org.docksweep.kiosk.rig.RigDay;
import org.docksweep.kiosk.rig.RigStanding;
import org.docksweep.kiosk.rig.Rigs;
import org.docksweep.kiosk.rig.StandardSet;
import org.docksweep.kiosk.service.ServiceClient;
import org.docksweep.kiosk.spool.Spool;
import org.docksweep.suspect.Priors;
import org.docksweep.sweep.PracticeRig;

/**
 * The fleet page's desk on the practice rig: everything real but the cabinets. The copy of the fleet does not know the two-way model
 * whose cabinets are swept, nor the cabinets.
 */
public final class TeachingBench implements AutoCloseable {
    /** Model of the invented house whose cabinets are taught as new ones. */
    public static final String UNKNOWN_MODEL = "SPIN12";

    /** Nothing listens there. */
    public static final ServiceClient NO_SERVICE = new ServiceClient(URI.create("http://127.0.0.1:9"), "a-token");

    private static final long SEED = 3;
    private static final long PATIENCE_S = 180;

    /** The desk. */
    public final Teaching desk;

    private final DemoHouse house = ServiceLoader.load(DemoHouseProvider.class)
            .findFirst()
            .orElseThrow()
            .house(SEED);
    private final PracticeRig rig;
    private final DockParts parts;
    private final Spool spool;
    private final Object changed = new Object();

    /**
     * Opens rig and desk.
     *
     * @param folder data folder
     * @param client way to the service
     * @throws Exception if the rig cannot be opened
     */
    public TeachingBench(Path folder, ServiceClient client) throws Exception {
        this(folder, client, Optional.empty());
    }

    /**
     * Opens rig and desk with a doubt about the microphone.
     *
     * @param folder data folder
     * @param client way to the service
     * @param doubt why the microphone is not proved; empty when it is
     * @throws Exception if the rig cannot be opened
     */
    TeachingBench(Path folder, ServiceClient client, Optional<Reason> doubt) throws Exception {
        rig = (PracticeRig) Rigs.open("virtual", Map.of("seed", Long.toString(SEED)));
        RealGate gate = new RealGate();
        RigStanding plain = new RigDay(rig, gate, StandardSet.practice(), Clock.systemUTC())
                .calibrateAndCheck(java.time.ZoneOffset.UTC)
                .standing();
        RigStanding standing = new RigStanding(
                plain.words(), plain.state(), plain.correction(), plain.refusal(), plain.repeatability(), doubt);
        spool = Spool.open(folder.resolve("spool"), Clock.systemUTC());
        LocalFleet fleet = new LocalFleet(snapshot(), List.of());
        parts = new DockParts(
                spool,
                rig,
                Lead.of(rig),
                () -> standing,
                gate,
                new RecordingKeeper(folder.resolve("recordings")),
                new PaperDesk(
                        folder.resolve("papers"),
                        List.of(org.docksweep.paper.TagForm.A5_LANDSCAPE),
                        Optional.empty(),
                        () -> null),
                Link.NONE,
                Clock.systemUTC(),
                new DockSettings("kiosk-01", 1, "Ines Duna", Locale.ENGLISH, Duration.ZERO));
        desk = new Teaching(new TeachingParts(parts, client, () -> fleet));
        desk.addListener(state -> {
            synchronized (changed) {
                changed.notifyAll();
            }
        });
    }

    private KioskSnapshot snapshot() {
        return new KioskSnapshot(
                java.time.Instant.now(),
                "Marram Coast Hire",
                "UTC",
                new ModelBook(
                        house.book().cabinetModels().stream()
                                .filter(m -> !m.code().equals(UNKNOWN_MODEL))
                                .toList(),
                        house.book().driverModels()),
                house.cabinets().stream()
                        .filter(c -> !c.modelCode().equals(UNKNOWN_MODEL))
                        .toList(),
                List.of(),
                List.of(),
                LimitSet.initial(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                Priors.USUAL,
                List.of());
    }

    /**
     * Cabinets of the unknown model that are healthy.
     *
     * @return their tags
     */
    public List<AssetTag> good() {
        return house.cabinets().stream()
                .filter(c -> c.modelCode().equals(UNKNOWN_MODEL))
                .map(c -> c.tag())
                .filter(tag -> house.arrivals().stream()
                        .filter(a -> a.label().equals(tag))
                        .allMatch(a -> a.truth().kind() == DemoHouse.Kind.HEALTHY))
                .toList();
    }

    /**
     * A sweep of one cabinet of the house.
     *
     * @param tag its tag
     * @return the sweep, of which no test point was swept yet
     */
    UnitSweep unit(AssetTag tag) {
        String model = house.cabinets().stream()
                .filter(c -> c.tag().equals(tag))
                .findFirst()
                .orElseThrow()
                .modelCode();
        return new UnitSweep(parts, tag, house.book().cabinetModel(model));
    }

    /**
     * Known-good cabinets of a model.
     *
     * @param modelCode model
     * @return their tags
     */
    List<AssetTag> good(String modelCode) {
        return house.referenceUnits().stream()
                .filter(tag -> house.cabinets().stream()
                        .anyMatch(c -> c.tag().equals(tag) && c.modelCode().equals(modelCode)))
                .toList();
    }

    /** The models of the house. */
    ModelBook book() {
        return house.book();
    }

    /**
     * A cabinet of the unknown model with a hard fault.
     *
     * @return its tag
     */
    public AssetTag bad() {
        return house.cabinets().stream()
                .filter(c -> c.modelCode().equals(UNKNOWN_MODEL))
                .map(c -> c.tag())
                .filter(tag -> house.arrivals().stream()
                        .anyMatch(a -> a.label().equals(tag) && a.truth().kind() == DemoHouse.Kind.HARD_FAULT))
                .findFirst()
                .orElseThrow();
    }

    /**
     * Waits for a state.
     *
     * @param what what is waited for
     * @param wanted tells it
     * @return the state
     * @throws InterruptedException if the wait is interrupted
     */
    public TeachingState await(String what, Predicate<TeachingState> wanted) throws InterruptedException {
        long end = System.nanoTime() + Duration.ofSeconds(PATIENCE_S).toNanos();
        synchronized (changed) {
            while (!wanted.test(desk.state())) {
                if (System.nanoTime() > end) {
                    throw new AssertionError("never saw " + what + "; the page shows " + desk.state());
                }
                changed.wait(200);
            }
        }
        return desk.state();
    }

    /**
     * Scans and sweeps a unit.
     *
     * @param tag its tag
     * @return the state afterwards
     * @throws InterruptedException if the wait is interrupted
     */
    public TeachingState sweep(AssetTag tag) throws InterruptedException {
        desk.scan(tag.value());
        await("a unit to sweep", s -> s.steps().contains(TeachingStep.SWEEP));
        desk.step(TeachingStep.SWEEP);
        return await(
                tag + " swept",
                s -> !s.busy()
                        && s.lesson().orElseThrow().units().stream()
                                .anyMatch(u -> u.tag().equals(tag)));
    }

    /**
     * From the list to the first unit of a new model.
     *
     * @param code code of the model
     * @throws InterruptedException if the wait is interrupted
     */
    public void draw(String code) throws InterruptedException {
        desk.step(TeachingStep.NEW_MODEL);
        await("a drawing", s -> s.drawing().isPresent());
        desk.scan(code);
        await("a named drawing", s -> s.steps().contains(TeachingStep.BEGIN));
        desk.step(TeachingStep.BEGIN);
        await("a lesson", s -> s.lesson().isPresent());
    }

    @Override
    public void close() {
        desk.close();
        rig.close();
        spool.close();
    }
}
