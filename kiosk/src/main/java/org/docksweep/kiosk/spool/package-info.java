/** What the kiosk must not lose: its copy of the fleet, its results, and what still waits to be sent. */
package org.docksweep.kiosk.spool;
