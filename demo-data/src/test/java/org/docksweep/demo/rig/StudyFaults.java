package org.docksweep.demo.rig;

import java.util.ArrayList;
import java.util.List;
import org.docksweep.demo.physics.Fault;
import org.docksweep.demo.physics.FaultKind;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.Enclosure;
import org.docksweep.fleet.EnclosureKind;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.NetworkElement;
import org.docksweep.fleet.TestPoint;

/** Every fault that a test point can have, at the severities promised. */
final class StudyFaults {
    private StudyFaults() {}

    static List<Fault> soft(ModelBook book, CabinetModel model, TestPoint point, boolean own) {
        List<Fault> all = new ArrayList<>();
        for (String p : point.positionCodes()) {
            double re = book.driverModelAt(model, p).dcResistanceOhm();
            all.add(Fault.of(FaultKind.CONTACT_RESISTANCE, p, contact(model, p, own ? 0.1 : 0.25) * re));
            all.add(Fault.of(FaultKind.SHORTED_TURNS, p, own ? 0.05 : 0.1));
            all.add(Fault.of(FaultKind.MAGNET_WEAK, p, 0.9));
        }
        for (NetworkElement e : point.elements()) {
            if (!(e instanceof NetworkElement.Driver)) {
                double off = own ? 0.15 : 0.35;
                all.add(Fault.of(FaultKind.PART_DRIFT, e.id(), 1 + off));
                all.add(Fault.of(FaultKind.PART_DRIFT, e.id(), 1 - off));
            }
        }
        for (Enclosure box : model.enclosures()) {
            if (point.positionCodes().containsAll(box.positionCodes()) && box.kind() != EnclosureKind.HORN) {
                all.add(Fault.of(FaultKind.LEAK, box.id(), 0.5));
                if (box.kind() == EnclosureKind.VENTED) {
                    all.add(Fault.of(FaultKind.PORT_BLOCKED, box.id()));
                }
            }
        }
        return all;
    }

    static List<Fault> hard(CabinetModel model, TestPoint point) {
        List<Fault> all = new ArrayList<>();
        for (String p : point.positionCodes()) {
            if (point.elements().size() > 1) {
                all.add(Fault.of(FaultKind.DRIVER_OPEN, p));
            }
            if (point.elements().size() > point.positionCodes().size()) {
                all.add(Fault.of(FaultKind.DRIVER_SHORTED, p, 0.1));
            }
            all.add(Fault.of(FaultKind.WRONG_IMPEDANCE, p, 2));
            all.add(Fault.of(FaultKind.WRONG_IMPEDANCE, p, 0.5));
            all.add(Fault.of(FaultKind.SEIZED, p));
        }
        for (Enclosure box : model.enclosures()) {
            if (box.positionCodes().size() > 1) {
                box.positionCodes().forEach(p -> all.add(Fault.of(FaultKind.POLARITY_REVERSED, p)));
            }
        }
        for (NetworkElement e : point.elements()) {
            if (!(e instanceof NetworkElement.Driver)) {
                all.add(Fault.of(FaultKind.PART_OPEN, e.id()));
                all.add(Fault.of(FaultKind.PART_SHORTED, e.id()));
            }
        }
        return all;
    }

    /** Of two equal drivers in parallel one is hurt so much that the resistance of both together rises by the severity. */
    private static double contact(CabinetModel model, String position, double severity) {
        boolean pair = model.enclosureOf(position).positionCodes().size() == 2;
        return pair ? 2 * severity / (1 - severity) : severity;
    }
}
