package org.docksweep.suspect;

import java.util.ArrayList;
import java.util.List;
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
    private static final double HEALTHY = 0.9;
    private static final double HIGH_DRIVER_OPEN = 0.02;
    private static final double DRIVER_OPEN = 0.008;
    private static final double DRIVER_SHORTED = 0.002;
    private static final double WRONG_PART = 0.002;
    private static final double SEIZED = 0.004;
    private static final double SHORTED_TURNS = 0.004;
    private static final double SERIES_RESISTANCE = 0.006;
    private static final double PART_OPEN = 0.002;
    private static final double PART_SHORTED = 0.001;
    private static final double PART_DRIFTED = 0.003;
    private static final double LEAK = 0.003;
    private static final double PORT_BLOCKED = 0.001;
    /** A drifted part is anywhere within about a factor of two. */
    private static final double DRIFT_SPREAD = 0.5;

    private HypothesisSet() {}

    static List<Hypothesis> of(CabinetModel model, TestPoint point) {
        List<Hypothesis> all = new ArrayList<>();
        all.add(Hypothesis.healthy(HEALTHY));
        for (NetworkElement element : point.elements()) {
            if (element instanceof NetworkElement.Driver driver) {
                addDriver(all, model, driver.positionCode());
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

    private static void addDriver(List<Hypothesis> all, CabinetModel model, String position) {
        double open = model.position(position).way() == Way.HF ? HIGH_DRIVER_OPEN : DRIVER_OPEN;
        all.add(Hypothesis.driver(FaultKind.DRIVER_OPEN, position, CircuitFault.Kind.DRIVER_OPEN, open));
        all.add(Hypothesis.driver(
                FaultKind.DRIVER_SHORTED, position, CircuitFault.Kind.DRIVER_SHORTED, DRIVER_SHORTED));
        all.add(Hypothesis.driver(
                FaultKind.WRONG_IMPEDANCE_PART, position, CircuitFault.Kind.DRIVER_DOUBLED, WRONG_PART));
        all.add(Hypothesis.driver(
                FaultKind.WRONG_IMPEDANCE_PART, position, CircuitFault.Kind.DRIVER_HALVED, WRONG_PART));
        all.add(Hypothesis.driver(FaultKind.COIL_SEIZED, position, CircuitFault.Kind.COIL_SEIZED, SEIZED));
        all.add(Hypothesis.driver(FaultKind.SHORTED_TURNS, position, CircuitFault.Kind.SHORTED_TURNS, SHORTED_TURNS));
        all.add(Hypothesis.driver(
                FaultKind.CONTACT_RESISTANCE, position, CircuitFault.Kind.SERIES_RESISTANCE, SERIES_RESISTANCE));
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
        all.add(Hypothesis.widened(FaultKind.LEAK, box.id(), box.id() + ".QL", -1.2, 0.7, LEAK));
        if (box.kind() == EnclosureKind.VENTED) {
            all.add(Hypothesis.element(FaultKind.PORT_BLOCKED, box.id(), CircuitFault.Kind.PORT_BLOCKED, PORT_BLOCKED));
        }
    }
}
