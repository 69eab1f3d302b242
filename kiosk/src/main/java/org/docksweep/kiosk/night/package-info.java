/** The demo night: one truckload through the real kiosk and the real service, compared with the truth at the end. */
package org.docksweep.kiosk.night;
