/**
 * Virtual cabinets: what the terminals and the air would show of one physical unit, healthy or hurt. Richer than a plain
 * lumped model on purpose, and written without any of the gate's own mathematics.
 */
package org.docksweep.demo.physics;
