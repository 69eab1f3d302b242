package org.docksweep.suspect;

import java.util.HashSet;
import java.util.Set;
import org.docksweep.fleet.NetworkElement;
import org.docksweep.fleet.TestPoint;

/** Finds the branch of a network a part belongs to. */
final class Branch {
    private static final Set<String> RAILS = Set.of("in", "0");

    private Branch() {}

    /** The driver position reached from a part without crossing the terminals, or null when there are none or several. */
    static String positionFedBy(TestPoint point, String elementId) {
        Set<String> nodes = new HashSet<>();
        point.elements().stream().filter(e -> e.id().equals(elementId)).forEach(e -> addNodes(nodes, e));
        boolean grown = true;
        while (grown) {
            grown = false;
            for (NetworkElement element : point.elements()) {
                if (nodes.contains(element.nodeA()) || nodes.contains(element.nodeB())) {
                    grown |= addNodes(nodes, element);
                }
            }
        }
        Set<String> positions = new HashSet<>();
        for (NetworkElement element : point.elements()) {
            if (element instanceof NetworkElement.Driver driver
                    && (nodes.contains(driver.nodeA()) || nodes.contains(driver.nodeB()))) {
                positions.add(driver.positionCode());
            }
        }
        return positions.size() == 1 ? positions.iterator().next() : null;
    }

    private static boolean addNodes(Set<String> nodes, NetworkElement element) {
        boolean grown = !RAILS.contains(element.nodeA()) && nodes.add(element.nodeA());
        return grown | (!RAILS.contains(element.nodeB()) && nodes.add(element.nodeB()));
    }
}
