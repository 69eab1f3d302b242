package org.docksweep.fleet;

import static org.docksweep.fleet.Require.inRange;
import static org.docksweep.fleet.Require.notNegative;
import static org.docksweep.fleet.Require.positive;
import static org.docksweep.fleet.Require.text;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;

/**
 * An element between two nodes of a cabinet's network. Node {@code "in"} is the hot terminal of the test point, node
 * {@code "0"} its return terminal; all other node names are free.
 */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "kind")
@JsonSubTypes({
    @JsonSubTypes.Type(value = NetworkElement.Resistor.class, name = "resistor"),
    @JsonSubTypes.Type(value = NetworkElement.Inductor.class, name = "inductor"),
    @JsonSubTypes.Type(value = NetworkElement.Capacitor.class, name = "capacitor"),
    @JsonSubTypes.Type(value = NetworkElement.Driver.class, name = "driver")
})
public sealed interface NetworkElement {

    /**
     * Name of the element, unique within its network, for example {@code C2}.
     *
     * @return the name
     */
    String id();

    /**
     * First node.
     *
     * @return node name
     */
    String nodeA();

    /**
     * Second node.
     *
     * @return node name
     */
    String nodeB();

    /**
     * A resistor or one leg of a pad.
     *
     * @param id name
     * @param nodeA first node
     * @param nodeB second node
     * @param resistanceOhm resistance, greater than 0
     * @param toleranceRel relative standard tolerance of healthy units, 0 to 0.5
     */
    record Resistor(String id, String nodeA, String nodeB, double resistanceOhm, double toleranceRel)
            implements NetworkElement {
        public Resistor {
            checkNodes(id, nodeA, nodeB);
            positive("resistor " + id + " resistanceOhm", resistanceOhm);
            inRange("resistor " + id + " toleranceRel", toleranceRel, 0, 0.5);
        }
    }

    /**
     * A coil: inductance in series with its own winding resistance.
     *
     * @param id name
     * @param nodeA first node
     * @param nodeB second node
     * @param inductanceH inductance in henry, from 1 uH to 1 H
     * @param seriesResistanceOhm winding resistance at 20 C, at least 0
     * @param toleranceRel relative standard tolerance of healthy units, 0 to 0.5
     */
    record Inductor(
            String id, String nodeA, String nodeB, double inductanceH, double seriesResistanceOhm, double toleranceRel)
            implements NetworkElement {
        public Inductor {
            checkNodes(id, nodeA, nodeB);
            if (!(inductanceH >= 1e-6 && inductanceH <= 1)) {
                throw new IllegalArgumentException("coil " + id + ": inductanceH is " + inductanceH
                        + ", expected 0.000001 to 1 henry. Were millihenries meant? 1.2 mH is 0.0012");
            }
            notNegative("coil " + id + " seriesResistanceOhm", seriesResistanceOhm);
            inRange("coil " + id + " toleranceRel", toleranceRel, 0, 0.5);
        }
    }

    /**
     * A capacitor with its equivalent series resistance.
     *
     * @param id name
     * @param nodeA first node
     * @param nodeB second node
     * @param capacitanceF capacitance in farad, from 1 nF to 10 mF
     * @param seriesResistanceOhm equivalent series resistance, at least 0
     * @param toleranceRel relative standard tolerance of healthy units, 0 to 0.5
     */
    record Capacitor(
            String id, String nodeA, String nodeB, double capacitanceF, double seriesResistanceOhm, double toleranceRel)
            implements NetworkElement {
        public Capacitor {
            checkNodes(id, nodeA, nodeB);
            if (!(capacitanceF >= 1e-9 && capacitanceF <= 1e-2)) {
                throw new IllegalArgumentException("capacitor " + id + ": capacitanceF is " + capacitanceF
                        + ", expected 0.000000001 to 0.01 farad. Were microfarads meant? 8.2 uF is 0.0000082");
            }
            notNegative("capacitor " + id + " seriesResistanceOhm", seriesResistanceOhm);
            inRange("capacitor " + id + " toleranceRel", toleranceRel, 0, 0.5);
        }
    }

    /**
     * A driver position seen from the network.
     *
     * @param id name
     * @param nodeA node of its positive terminal
     * @param nodeB node of its negative terminal
     * @param positionCode the driver position of the cabinet model
     */
    record Driver(String id, String nodeA, String nodeB, String positionCode) implements NetworkElement {
        public Driver {
            checkNodes(id, nodeA, nodeB);
            text("driver element " + id + " positionCode", positionCode);
        }
    }

    private static void checkNodes(String id, String nodeA, String nodeB) {
        text("network element id", id);
        text("network element " + id + " nodeA", nodeA);
        text("network element " + id + " nodeB", nodeB);
        if (nodeA.equals(nodeB)) {
            throw new IllegalArgumentException(
                    "network element " + id + " has both ends on node " + nodeA + "; give it two different nodes");
        }
    }
}
