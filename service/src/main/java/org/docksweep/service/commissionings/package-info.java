/** Outgoing and commissioning sweeps: the baselines of single cabinets, older ones kept. */
package org.docksweep.service.commissionings;
