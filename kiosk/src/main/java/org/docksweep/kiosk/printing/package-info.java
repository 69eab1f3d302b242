/** Papers: to the printer when there is one, otherwise into a folder. Never holds up the dock. */
package org.docksweep.kiosk.printing;
