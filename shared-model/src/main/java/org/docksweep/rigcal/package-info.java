/** Calibration of the rig: open/short/load compensation, check standards, control charts. */
package org.docksweep.rigcal;
