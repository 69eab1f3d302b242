/** The kiosk's own copy of the fleet: what it needs to work without a network. */
package org.docksweep.kiosk.fleet;
