package org.docksweep.demo.physics;

import java.util.List;
import java.util.Map;
import org.docksweep.fleet.NetworkElement;

/**
 * The true parameters of one physical cabinet, healthy, at 20 C.
 *
 * @param drivers by position code, in the model's order
 * @param boxes enclosures
 * @param networks elements by test point code
 */
record TrueUnit(Map<String, TrueDriver> drivers, List<TrueBox> boxes, Map<String, List<NetworkElement>> networks) {}
