/** The cabinets of the fleet, the drivers installed in them, and their append-only history. */
package org.docksweep.service.cabinets;
