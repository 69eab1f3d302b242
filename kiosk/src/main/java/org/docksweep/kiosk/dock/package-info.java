/** The return dock: from scan to answer. Knows no widgets; screens show its {@link DockState}. */
package org.docksweep.kiosk.dock;
