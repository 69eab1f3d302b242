/** Measurements with their curves, and the recordings they were computed from. */
package org.docksweep.service.measurements;
