package org.docksweep.suspect;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.docksweep.circuit.CircuitFault;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.Enclosure;
import org.docksweep.fleet.EnclosureKind;
import org.docksweep.fleet.NetworkElement;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.Way;

/**
 * Everything that could be wrong at a test point, enumerated from its network and its drivers. Weights are prior
 * probabilities of a returned cabinet; common practice, no source. {@link Priors} of a house move them.
 */
final class HypothesisSet {
    static final double HEALTHY = 0.9;
    private static final double HIGH_DRIVER_OPEN = 0.02;
    private static final double DRIVER_OPEN = 0.008;
    private static final double DRIVER_SHORTED = 0.002;
    private static final double WRONG_PART = 0.002;
    private static final double SEIZED = 0.004;
    private static final double SHORTED_TURNS = 0.004;
    private static final double SERIES_RESISTANCE = 0.006;
    private static final double MAGNET = 0.001;
    private static final double PLUG_CONTACT = 0.004;
    /** None of the faults enumerated. */
    static final double UNKNOWN = 0.002;

    private static final double POLARITY = 0.001;
    /** Resistance of a bad plug above that of a good one, and its spread, in ohm. */
    private static final double PLUG_CONTACT_OHM = 0.5;

    private static final double PLUG_CONTACT_SPREAD_OHM = 0.4;
    private static final double PART_OPEN = 0.002;
    private static final double PART_SHORTED = 0.001;
    private static final double PART_DRIFTED = 0.003;
    private static final double LEAK = 0.003;
    private static final double PORT_BLOCKED = 0.001;
    /** A drifted part is seldom off by more than a factor of two. */
    private static final double DRIFT_SPREAD = 0.35;

    private HypothesisSet() {}

    static List<Hypothesis> of(CabinetModel model, TestPoint point) {
        List<Hypothesis> all = new ArrayList<>();
        all.add(Hypothesis.healthy(HEALTHY));
        all.add(Hypothesis.widened(
                FaultKind.CONTACT_RESISTANCE,
                null,
                "contact",
                PLUG_CONTACT_OHM,
                PLUG_CONTACT_SPREAD_OHM,
                PLUG_CONTACT));
        for (NetworkElement element : point.elements()) {
            if (element instanceof NetworkElement.Driver driver) {
                addDriver(all, model, point, driver);
            } else {
                addPart(all, element);
            }
        }
        for (Enclosure box : model.enclosures()) {
            if (point.positionCodes().containsAll(box.positionCodes())) {
                addBox(all, box);
            }
        }
        return all;
    }

    private static void addDriver(
            List<Hypothesis> all, CabinetModel model, TestPoint point, NetworkElement.Driver driver) {
        String position = driver.positionCode();
        double open = model.position(position).way() == Way.HF ? HIGH_DRIVER_OPEN : DRIVER_OPEN;
        all.add(Hypothesis.driver(FaultKind.DRIVER_OPEN, position, CircuitFault.Kind.DRIVER_OPEN, open));
        if (leavesAnotherOfItsBoxDriven(model, point, driver)) {
            // whether the shorted coil still brakes its cone shows in the other's curve, and depends on where the short
            // sits
            all.add(Hypothesis.driver(
                    FaultKind.DRIVER_SHORTED, position, CircuitFault.Kind.DRIVER_SHORTED, DRIVER_SHORTED / 2));
            all.add(Hypothesis.driver(
                    FaultKind.DRIVER_SHORTED, position, CircuitFault.Kind.DRIVER_BRIDGED, DRIVER_SHORTED / 2));
        } else {
            all.add(Hypothesis.driver(
                    FaultKind.DRIVER_SHORTED, position, CircuitFault.Kind.DRIVER_SHORTED, DRIVER_SHORTED));
        }
        all.add(Hypothesis.driver(
                FaultKind.WRONG_IMPEDANCE_PART, position, CircuitFault.Kind.DRIVER_DOUBLED, WRONG_PART));
        all.add(Hypothesis.driver(
                FaultKind.WRONG_IMPEDANCE_PART, position, CircuitFault.Kind.DRIVER_HALVED, WRONG_PART));
        all.add(Hypothesis.driver(FaultKind.COIL_SEIZED, position, CircuitFault.Kind.COIL_SEIZED, SEIZED));
        all.add(Hypothesis.driver(FaultKind.SHORTED_TURNS, position, CircuitFault.Kind.SHORTED_TURNS, SHORTED_TURNS));
        all.add(Hypothesis.driver(
                FaultKind.CONTACT_RESISTANCE, position, CircuitFault.Kind.SERIES_RESISTANCE, SERIES_RESISTANCE));
        all.add(Hypothesis.driver(FaultKind.MAGNET_WEAK, position, CircuitFault.Kind.MAGNET_WEAK, MAGNET));
    }

    /** Whether another cone in the same air goes on playing when this driver is shorted: it is not side by side with it. */
    private static boolean leavesAnotherOfItsBoxDriven(
            CabinetModel model, TestPoint point, NetworkElement.Driver driver) {
        List<String> box = model.enclosureOf(driver.positionCode()).positionCodes();
        Set<String> nodes = Set.of(driver.nodeA(), driver.nodeB());
        return point.elements().stream()
                .filter(NetworkElement.Driver.class::isInstance)
                .map(NetworkElement.Driver.class::cast)
                .filter(other -> box.contains(other.positionCode()))
                .anyMatch(other -> !nodes.containsAll(List.of(other.nodeA(), other.nodeB())));
    }

    private static void addPart(List<Hypothesis> all, NetworkElement part) {
        all.add(Hypothesis.element(FaultKind.PART_OPEN, part.id(), CircuitFault.Kind.ELEMENT_OPEN, PART_OPEN));
        all.add(Hypothesis.element(FaultKind.PART_SHORTED, part.id(), CircuitFault.Kind.ELEMENT_SHORTED, PART_SHORTED));
        all.add(Hypothesis.widened(
                FaultKind.PART_DRIFTED, part.id(), part.id() + ".value", 0, DRIFT_SPREAD, PART_DRIFTED));
    }

    private static void addBox(List<Hypothesis> all, Enclosure box) {
        if (box.kind() != EnclosureKind.CLOSED && box.kind() != EnclosureKind.VENTED) {
            return;
        }
        if (box.positionCodes().size() > 1) {
            // the current shows polarity only where cones share their air
            box.positionCodes()
                    .forEach(p -> all.add(Hypothesis.driver(
                            FaultKind.POLARITY_REVERSED, p, CircuitFault.Kind.POLARITY_REVERSED, POLARITY)));
        }
        all.add(Hypothesis.widened(FaultKind.LEAK, box.id(), box.id() + ".QL", -1.2, 0.7, LEAK));
        if (box.kind() == EnclosureKind.VENTED) {
            all.add(Hypothesis.element(FaultKind.PORT_BLOCKED, box.id(), CircuitFault.Kind.PORT_BLOCKED, PORT_BLOCKED));
        }
    }
}
