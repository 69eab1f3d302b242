/** The rig at this kiosk: opening it, its lead, its standing, and the recordings it makes. */
package org.docksweep.kiosk.rig;
