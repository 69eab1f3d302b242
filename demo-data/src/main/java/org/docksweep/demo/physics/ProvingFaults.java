package org.docksweep.demo.physics;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.docksweep.contract.ProvingFault;
import org.docksweep.contract.ProvingFaultKind;
import org.docksweep.contract.ProvingUnit;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverPosition;
import org.docksweep.fleet.Enclosure;
import org.docksweep.fleet.EnclosureKind;
import org.docksweep.fleet.Feed;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.NetworkElement;
import org.docksweep.fleet.TestPoint;

/** What can be wrong with a model in a proving run, and how it acts. */
public final class ProvingFaults {
    /** Sound that is left of a silent driver. */
    private static final double SILENT = 1e-3;

    /** Conductance that is left of an all but open driver, of its own. */
    private static final double ALL_BUT_OPEN = 0.02;

    private ProvingFaults() {}

    /**
     * Every fault a model can have. A powered cabinet shows from outside what its sound shows: those kinds only.
     *
     * @param model the model
     * @return faults, one per kind and target
     */
    public static List<ProvingFault> of(CabinetModel model) {
        List<ProvingFault> all = new ArrayList<>();
        boolean powered = model.feed() == Feed.POWERED;
        for (DriverPosition position : model.positions()) {
            addDriver(all, model, position.code(), powered);
        }
        if (powered) {
            return List.copyOf(all);
        }
        for (TestPoint point : model.testPoints()) {
            add(all, ProvingFaultKind.TERMINALS_SHORTED, point.code(), point.positionCodes());
            add(all, ProvingFaultKind.NOTHING_CONNECTED, point.code(), List.of());
            for (NetworkElement element : point.elements()) {
                if (!(element instanceof NetworkElement.Driver)) {
                    List<String> fed = positionsFedBy(point, element);
                    add(all, ProvingFaultKind.PART_OPEN, element.id(), fed);
                    add(all, ProvingFaultKind.PART_SHORTED, element.id(), fed);
                    add(all, ProvingFaultKind.PART_OFF_VALUE, element.id(), fed);
                }
            }
        }
        for (Enclosure box : model.enclosures()) {
            if (box.kind() == EnclosureKind.CLOSED || box.kind() == EnclosureKind.VENTED) {
                add(all, ProvingFaultKind.LEAK, box.id(), box.positionCodes());
            }
            if (box.kind() == EnclosureKind.VENTED) {
                add(all, ProvingFaultKind.PORT_BLOCKED, box.id(), box.positionCodes());
            }
        }
        if (model.testPoints().size() == 2) {
            add(all, ProvingFaultKind.PAIRS_SWAPPED, model.testPoints().get(0).code(), List.of());
        }
        return List.copyOf(all);
    }

    private static void addDriver(List<ProvingFault> all, CabinetModel model, String position, boolean powered) {
        List<String> one = List.of(position);
        boolean alone = model.enclosureOf(position).positionCodes().size() == 1;
        add(all, alone ? ProvingFaultKind.DRIVER_OPEN : ProvingFaultKind.ONE_OF_TWO_OPEN, position, one);
        add(all, ProvingFaultKind.COIL_SHORTED, position, one);
        add(all, ProvingFaultKind.WRONG_IMPEDANCE, position, one);
        add(all, ProvingFaultKind.SEIZED, position, one);
        add(all, ProvingFaultKind.WAY_WEAK, position, one);
        add(all, ProvingFaultKind.POLARITY, position, one);
        add(all, ProvingFaultKind.RUB, position, one);
        if (!powered) {
            add(all, ProvingFaultKind.CONTACT_RESISTANCE, position, one);
            add(all, ProvingFaultKind.SHORTED_TURNS, position, one);
            add(all, ProvingFaultKind.MAGNET_WEAK, position, one);
        }
    }

    private static void add(List<ProvingFault> all, ProvingFaultKind kind, String target, List<String> positions) {
        all.add(new ProvingFault(kind, target, positions));
    }

    /** Drivers reached from a part without crossing the terminals; all behind the point if none is. */
    private static List<String> positionsFedBy(TestPoint point, NetworkElement part) {
        Set<String> nodes = new HashSet<>(List.of(part.nodeA(), part.nodeB()));
        Set<String> rails = Set.of(CabinetCircuit.INPUT, CabinetCircuit.RETURN);
        nodes.removeAll(rails);
        boolean grown = true;
        while (grown) {
            grown = false;
            for (NetworkElement element : point.elements()) {
                if (nodes.contains(element.nodeA()) || nodes.contains(element.nodeB())) {
                    for (String node : List.of(element.nodeA(), element.nodeB())) {
                        grown |= !rails.contains(node) && nodes.add(node);
                    }
                }
            }
        }
        List<String> fed = new ArrayList<>();
        for (NetworkElement element : point.elements()) {
            if (element instanceof NetworkElement.Driver driver
                    && (nodes.contains(driver.nodeA()) || nodes.contains(driver.nodeB()))) {
                fed.add(driver.positionCode());
            }
        }
        return fed.isEmpty() ? point.positionCodes() : fed;
    }

    /**
     * The cabinet as described.
     *
     * @param book models, the unit's among them
     * @param mechanics mechanical values of their drivers
     * @param unit description
     * @return the cabinet
     */
    public static VirtualCabinet cabinet(
            ModelBook book, java.util.Map<String, DriverMechanics> mechanics, ProvingUnit unit) {
        ProvingUnit.Climate climate = unit.climate();
        VirtualCabinet whole = VirtualCabinet.produced(
                        book, mechanics, unit.modelCode(), unit.unitSeed(), unit.ageYears())
                .at(new Climate(
                        climate.coilCelsius(),
                        climate.insideCelsius(),
                        climate.insideCelsius(),
                        climate.ambientCelsius()));
        return unit.fault() == null ? whole : whole.with(fault(book, whole.model(), unit));
    }

    private static Fault fault(ModelBook book, CabinetModel model, ProvingUnit unit) {
        String target = unit.fault().target();
        double severity = unit.severity();
        int drivers = driversOfTheWay(model, target);
        return switch (unit.fault().kind()) {
            case DRIVER_OPEN, ONE_OF_TWO_OPEN -> Fault.of(FaultKind.DRIVER_OPEN, target);
            case TERMINALS_SHORTED -> Fault.of(FaultKind.TERMINALS_SHORTED, target, severity);
            case COIL_SHORTED -> Fault.of(FaultKind.DRIVER_SHORTED, target, severity);
            case WRONG_IMPEDANCE -> Fault.of(FaultKind.WRONG_IMPEDANCE, target, severity);
            case SEIZED -> Fault.of(FaultKind.SEIZED, target);
            case PART_OPEN -> Fault.of(FaultKind.PART_OPEN, target);
            case PART_SHORTED -> Fault.of(FaultKind.PART_SHORTED, target);
            case CONTACT_RESISTANCE ->
                Fault.of(
                        FaultKind.CONTACT_RESISTANCE,
                        target,
                        contactShare(severity, drivers)
                                * book.driverModelAt(model, target).dcResistanceOhm());
            case SHORTED_TURNS -> Fault.of(FaultKind.SHORTED_TURNS, target, severity);
            case PART_OFF_VALUE -> Fault.of(FaultKind.PART_DRIFT, target, 1 + severity);
            case LEAK -> Fault.of(FaultKind.LEAK, target, severity);
            case PORT_BLOCKED -> Fault.of(FaultKind.PORT_BLOCKED, target);
            case WAY_WEAK -> Fault.of(FaultKind.WAY_WEAK, target, weakDb(severity, drivers));
            case POLARITY -> Fault.of(FaultKind.POLARITY_REVERSED, target);
            case RUB -> Fault.of(FaultKind.RUB, target, severity);
            case MAGNET_WEAK -> Fault.of(FaultKind.MAGNET_WEAK, target, 1 - severity);
            case NOTHING_CONNECTED -> Fault.of(FaultKind.NOTHING_CONNECTED, target);
            case PAIRS_SWAPPED -> Fault.of(FaultKind.PAIRS_SWAPPED, target);
            case WRONG_LABEL, UNTAUGHT_MODEL ->
                throw new IllegalArgumentException(
                        unit.fault().kind() + " is another cabinet, not a fault of this one");
        };
    }

    /** Equal drivers that work side by side in the way and the box of a position; 1 for everything that is no position. */
    private static int driversOfTheWay(CabinetModel model, String target) {
        return model.positions().stream()
                .filter(p -> p.code().equals(target))
                .findAny()
                .map(own -> (int) model.positions().stream()
                        .filter(p -> p.way() == own.way() && p.driverModelCode().equals(own.driverModelCode()))
                        .filter(p -> model.enclosureOf(p.code()).equals(model.enclosureOf(own.code())))
                        .count())
                .orElse(1);
    }

    /**
     * Contact resistance at one driver, as a share of its Re, that raises the resistance of its way by a share:
     * {@code (n - 1) / R + 1 / (R + c) = n / (R (1 + s))}. One of a pair cannot raise it by more than the double: a greater share counts
     * as that driver all but open.
     */
    static double contactShare(double share, int drivers) {
        return 1 / Math.max(ALL_BUT_OPEN, drivers / (1 + share) - (drivers - 1)) - 1;
    }

    /**
     * Loss of one driver, in dB, that lowers its way by a loss, the others as they were: {@code (n - 1 + a) / n = 10^(-L / 20)}. One
     * driver alone can lower a pair by 6.02 dB; a greater loss counts as that driver silent.
     */
    static double weakDb(double lossDb, int drivers) {
        double left = drivers * Math.pow(10, -lossDb / 20) - (drivers - 1);
        return -20 * Math.log10(Math.max(SILENT, left));
    }
}
