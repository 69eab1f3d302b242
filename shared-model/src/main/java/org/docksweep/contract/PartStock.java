package org.docksweep.contract;

import java.util.List;
import org.docksweep.fleet.Part;

/**
 * A part of the catalogue and what is there of it.
 *
 * @param part the part
 * @param inStock pieces in stock, at least 0
 * @param units single pieces known by serial, newest first; those used up included
 */
public record PartStock(Part part, int inStock, List<PartUnit> units) {}
