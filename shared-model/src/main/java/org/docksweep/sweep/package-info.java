/** Sweep, capture and recording files, the rig interface, and the way from capture to curve. */
package org.docksweep.sweep;
