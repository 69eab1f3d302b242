package org.docksweep.circuit;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.Enclosure;
import org.docksweep.fleet.NetworkElement;
import org.docksweep.fleet.TestPoint;

/** What must be true of a network before it can become a circuit; each breach is said in words. */
final class NetworkCheck {
    private NetworkCheck() {}

    /** Every part hangs between the terminals, and none at a node of its own. */
    static void nodes(CabinetModel model, TestPoint point) {
        Map<String, Integer> uses = new HashMap<>();
        for (NetworkElement element : point.elements()) {
            uses.merge(element.nodeA(), 1, Integer::sum);
            uses.merge(element.nodeB(), 1, Integer::sum);
        }
        String where = "cabinet model " + model.code() + ", test point " + point.code();
        if (!uses.containsKey(CircuitCompiler.INPUT_NODE) || !uses.containsKey(CircuitCompiler.RETURN_NODE)) {
            throw new IllegalArgumentException(
                    where + ": the network must use node \"in\" (hot terminal) and node \"0\""
                            + " (return terminal), but its nodes are " + new java.util.TreeSet<>(uses.keySet()));
        }
        uses.forEach((name, count) -> {
            if (count == 1 && !name.equals(CircuitCompiler.INPUT_NODE) && !name.equals(CircuitCompiler.RETURN_NODE)) {
                throw new IllegalArgumentException(where + ": node \"" + name
                        + "\" hangs free, only one part ends there; connect a second part or correct the name");
            }
        });
        Set<String> reached = new HashSet<>(Set.of(CircuitCompiler.INPUT_NODE));
        boolean grown = true;
        while (grown) {
            grown = false;
            for (NetworkElement e : point.elements()) {
                if (reached.contains(e.nodeA()) != reached.contains(e.nodeB())) {
                    grown = reached.add(e.nodeA()) | reached.add(e.nodeB());
                }
            }
        }
        if (!reached.containsAll(uses.keySet())) {
            Set<String> floating = new java.util.TreeSet<>(uses.keySet());
            floating.removeAll(reached);
            throw new IllegalArgumentException(
                    where + ": nodes " + floating + " are not connected to the input; correct the node names");
        }
    }

    /** A fault is of something that the point has. */
    static void faultTarget(CabinetModel model, TestPoint point, List<Enclosure> boxes, CircuitFault fault) {
        boolean known = switch (fault.kind()) {
            case NONE -> true;
            case ELEMENT_OPEN, ELEMENT_SHORTED ->
                point.elements().stream().anyMatch(e -> e.id().equals(fault.target()));
            case PORT_BLOCKED -> boxes.stream().anyMatch(e -> e.id().equals(fault.target()));
            default -> point.positionCodes().contains(fault.target());
        };
        if (!known) {
            throw new IllegalArgumentException("test point " + point.code() + " of " + model.code() + " has no "
                    + fault.target() + " to be " + fault.kind());
        }
    }
}
