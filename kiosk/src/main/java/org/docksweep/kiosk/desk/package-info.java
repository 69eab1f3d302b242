/** The thread that each desk of the kiosk lives on, and how what it shows gets to the window. */
package org.docksweep.kiosk.desk;
