package org.docksweep.demo.physics;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.docksweep.demo.DemoModels;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.EnclosureKind;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.NetworkElement;
import org.docksweep.fleet.Require;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;

/**
 * One physical cabinet of the demo house: its own true parameters, its faults and its temperature. Immutable; equal
 * seeds give equal cabinets.
 */
public final class VirtualCabinet {
    private final CabinetModel model;
    private final TrueUnit unit;
    private final Realism realism;
    private final List<Fault> faults;
    private final Climate climate;

    private VirtualCabinet(CabinetModel model, TrueUnit unit, Realism realism, List<Fault> faults, Climate climate) {
        this.model = model;
        this.unit = unit;
        this.realism = realism;
        this.faults = List.copyOf(faults);
        this.climate = climate;
    }

    /**
     * A unit as production and years left it: healthy, at 20 C, full realism.
     *
     * @param book the fleet's models, all of which have mechanical values in {@link DemoModels#mechanics()}
     * @param modelCode its cabinet model
     * @param seed what makes it this unit
     * @param ageYears its age, 0 to 50
     * @return the cabinet
     */
    public static VirtualCabinet produced(ModelBook book, String modelCode, long seed, double ageYears) {
        Require.inRange("ageYears", ageYears, 0, 50);
        return built(book, DemoModels.mechanics(), modelCode, Realism.FULL, seed, 1, ageYears);
    }

    /**
     * A unit of a model that is not in the demo house.
     *
     * @param book models
     * @param mechanics mechanical values by driver model code
     * @param modelCode its cabinet model
     * @param seed what makes it this unit
     * @param ageYears its age, 0 to 50
     * @return the cabinet, at 20 C, full realism
     */
    public static VirtualCabinet produced(
            ModelBook book, Map<String, DriverMechanics> mechanics, String modelCode, long seed, double ageYears) {
        Require.inRange("ageYears", ageYears, 0, 50);
        return built(book, mechanics, modelCode, Realism.FULL, seed, 1, ageYears);
    }

    /**
     * A new unit with exactly the model's nominal values.
     *
     * @param book models
     * @param mechanics mechanical values by driver model code
     * @param modelCode cabinet model
     * @param realism how much of the world is simulated
     * @return the cabinet, at 20 C
     */
    public static VirtualCabinet nominal(
            ModelBook book, Map<String, DriverMechanics> mechanics, String modelCode, Realism realism) {
        return built(book, mechanics, modelCode, realism, 0, 0, 0);
    }

    private static VirtualCabinet built(
            ModelBook book,
            Map<String, DriverMechanics> mechanics,
            String modelCode,
            Realism realism,
            long seed,
            double spread,
            double ageYears) {
        CabinetModel model = book.cabinetModel(modelCode);
        TrueUnit unit = new UnitBuilder(book, mechanics, model, realism, seed, spread, ageYears).build();
        return new VirtualCabinet(model, unit, realism, List.of(), Climate.even(Climate.REFERENCE_CELSIUS));
    }

    /**
     * The same unit with one more fault.
     *
     * @param fault the fault
     * @return another cabinet
     * @throws IllegalArgumentException if the model has no such target
     */
    public VirtualCabinet with(Fault fault) {
        fault.requireTargetIn(model);
        List<Fault> more = new ArrayList<>(faults);
        more.add(fault);
        return new VirtualCabinet(model, unit, realism, more, climate);
    }

    /**
     * The same unit without the faults of a kind; used for the moments in which an intermittent contact holds.
     *
     * @param kind kind to leave out
     * @return another cabinet
     */
    public VirtualCabinet without(FaultKind kind) {
        return new VirtualCabinet(
                model,
                unit,
                realism,
                faults.stream().filter(f -> f.kind() != kind).toList(),
                climate);
    }

    /**
     * The same unit at another temperature.
     *
     * @param newClimate temperatures
     * @return another cabinet
     */
    public VirtualCabinet at(Climate newClimate) {
        return new VirtualCabinet(model, unit, realism, faults, newClimate);
    }

    /**
     * Its cabinet model.
     *
     * @return the model
     */
    public CabinetModel model() {
        return model;
    }

    /**
     * Its faults.
     *
     * @return faults, empty when healthy
     */
    public List<Fault> faults() {
        return faults;
    }

    /**
     * The first fault of a kind.
     *
     * @param kind kind
     * @return the fault or null
     */
    public Fault fault(FaultKind kind) {
        return faults.stream().filter(f -> f.kind() == kind).findFirst().orElse(null);
    }

    /**
     * What the rig finds at a test point.
     *
     * @param testPointCode test point
     * @return the load
     * @throws IllegalArgumentException if the model has no such test point
     */
    public Load load(String testPointCode) {
        TestPoint asked = model.testPoint(testPointCode);
        if (hit(FaultKind.NOTHING_CONNECTED, asked.code())) {
            return new PlainLoad(f -> new org.hipparchus.complex.Complex(DriverCondition.OPEN_OHM));
        }
        TestPoint point = swapped() ? other(asked) : asked;
        if (point.kind() == TestPointKind.LINE_INPUT) {
            return PoweredLoad.of(model, point, this::driverCircuit);
        }
        return circuit(unit.networks().get(point.code()), shuntOhm(point.code()));
    }

    /**
     * What the bench rig finds at one of its drivers, taken out: a cone in free air, a compression driver on the bench's
     * test horn. The faults of the driver came along; those of box and crossover stayed behind.
     *
     * @param positionCode driver position
     * @return the load
     * @throws IllegalArgumentException if the model has no such position
     */
    public Load bareDriver(String positionCode) {
        model.position(positionCode);
        NetworkElement bare = new NetworkElement.Driver("D", CabinetCircuit.INPUT, CabinetCircuit.RETURN, positionCode);
        TrueDriver onBench = unit.drivers().get(positionCode).onTestHorn();
        TrueBox air = new TrueBox("air", EnclosureKind.FREE_AIR, List.of(positionCode), 0, 0, 0, 0, 0, 0, 0);
        DriverGroup alone = new DriverGroup(
                List.of(conditions(Map.of(positionCode, onBench)).get(positionCode)), List.of(bare), air);
        PartPhysics parts = new PartPhysics(Set.of(), Set.of(), climate, realism);
        return new CabinetCircuit(List.of(bare), List.of(alone), parts, Double.POSITIVE_INFINITY, null);
    }

    /**
     * The truth about a driver, for comparison with what was measured.
     *
     * @param positionCode driver position
     * @return DC resistance of its coil at the coil's temperature, without faults, in ohm
     */
    public double dcResistanceOhm(String positionCode) {
        return unit.drivers().get(positionCode).dcResistanceOhm() * climate.copperFactor();
    }

    /**
     * The truth about a box, for comparison with what was measured.
     *
     * @param enclosureId enclosure
     * @return frequency at which its port resonates with all of its compliance, weak panels included, in hertz; 0 without
     *     a port
     */
    public double tuningHz(String enclosureId) {
        return unit.boxes().stream()
                .filter(b -> b.id().equals(enclosureId))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(model.code() + " has no enclosure " + enclosureId))
                .resonanceHz();
    }

    private boolean swapped() {
        return fault(FaultKind.PAIRS_SWAPPED) != null && model.testPoints().size() == 2;
    }

    private TestPoint other(TestPoint point) {
        return model.testPoints().get(0).equals(point)
                ? model.testPoints().get(1)
                : model.testPoints().get(0);
    }

    private boolean hit(FaultKind kind, String target) {
        return faults.stream().anyMatch(f -> f.kind() == kind && f.target().equals(target));
    }

    private double shuntOhm(String testPointCode) {
        return faults.stream()
                .filter(f ->
                        f.kind() == FaultKind.TERMINALS_SHORTED && f.target().equals(testPointCode))
                .mapToDouble(f -> Math.max(1e-3, f.severity()))
                .min()
                .orElse(Double.POSITIVE_INFINITY);
    }

    private Load driverCircuit(String positionCode) {
        NetworkElement bare = new NetworkElement.Driver("D", CabinetCircuit.INPUT, CabinetCircuit.RETURN, positionCode);
        return circuit(List.of(bare), Double.POSITIVE_INFINITY);
    }

    private CabinetCircuit circuit(List<NetworkElement> elements, double shuntOhm) {
        List<NetworkElement> drifted = elements.stream().map(this::drifted).toList();
        Map<String, DriverCondition> conditions = conditions();
        List<DriverGroup> groups = new ArrayList<>();
        for (TrueBox box : boxes()) {
            List<NetworkElement> inNetwork = new ArrayList<>();
            Map<String, DriverCondition> members = new LinkedHashMap<>();
            for (NetworkElement element : drifted) {
                if (element instanceof NetworkElement.Driver driver
                        && box.positionCodes().contains(driver.positionCode())) {
                    inNetwork.add(element);
                    members.put(driver.positionCode(), conditions.get(driver.positionCode()));
                }
            }
            if (!inNetwork.isEmpty()) {
                box.positionCodes().forEach(p -> members.putIfAbsent(p, conditions.get(p)));
                groups.add(new DriverGroup(List.copyOf(members.values()), inNetwork, box));
            }
        }
        PartPhysics parts =
                new PartPhysics(targets(FaultKind.PART_OPEN), targets(FaultKind.PART_SHORTED), climate, realism);
        return new CabinetCircuit(drifted, groups, parts, shuntOhm, rattle(inNetwork(drifted)));
    }

    private static Set<String> inNetwork(List<NetworkElement> elements) {
        Set<String> codes = new HashSet<>();
        for (NetworkElement element : elements) {
            if (element instanceof NetworkElement.Driver driver) {
                codes.add(driver.positionCode());
            }
        }
        return codes;
    }

    /** A loose part of a box that one of these drivers shakes; it swings above the tuning, where cones push most. */
    private Load.Rattle rattle(Set<String> positionCodes) {
        Fault buzz = fault(FaultKind.BUZZ);
        if (buzz == null) {
            return null;
        }
        return unit.boxes().stream()
                .filter(b -> b.id().equals(buzz.target())
                        && b.positionCodes().stream().anyMatch(positionCodes::contains))
                .findFirst()
                .map(b -> new Load.Rattle(buzz.severity(), b.tuningHz() > 0 ? 1.7 * b.tuningHz() : 95))
                .orElse(null);
    }

    private Set<String> targets(FaultKind kind) {
        Set<String> found = new HashSet<>();
        faults.stream().filter(f -> f.kind() == kind).forEach(f -> found.add(f.target()));
        return found;
    }

    private Map<String, DriverCondition> conditions() {
        return conditions(unit.drivers());
    }

    private Map<String, DriverCondition> conditions(Map<String, TrueDriver> drivers) {
        Map<String, DriverCondition> conditions = new LinkedHashMap<>();
        drivers.forEach((code, driver) -> conditions.put(code, new DriverCondition(driver, climate)));
        for (Fault fault : faults) {
            if (!conditions.containsKey(fault.target())) {
                continue;
            }
            if (fault.kind() == FaultKind.INTERMITTENT) {
                conditions.get(fault.target()).apply(Fault.of(FaultKind.DRIVER_OPEN, fault.target()));
            } else if (fault.kind().target() == FaultKind.Target.POSITION) {
                conditions.get(fault.target()).apply(fault);
            }
        }
        return conditions;
    }

    private List<TrueBox> boxes() {
        List<TrueBox> boxes = new ArrayList<>(unit.boxes());
        for (Fault fault : faults) {
            if (fault.kind() == FaultKind.LEAK) {
                boxes.replaceAll(b -> b.id().equals(fault.target()) ? b.leaking(fault.severity()) : b);
            } else if (fault.kind() == FaultKind.PORT_BLOCKED) {
                boxes.replaceAll(b -> b.id().equals(fault.target()) ? b.portBlocked() : b);
            }
        }
        return boxes;
    }

    private NetworkElement drifted(NetworkElement element) {
        double factor = faults.stream()
                .filter(f -> f.kind() == FaultKind.PART_DRIFT && f.target().equals(element.id()))
                .mapToDouble(Fault::severity)
                .reduce(1, (a, b) -> a * b);
        return PartPhysics.drifted(element, factor);
    }
}
