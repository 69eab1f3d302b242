package org.docksweep.demo;

import org.docksweep.demo.physics.VirtualCabinet;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.ModelBook;

/**
 * One cabinet the house owns, as a thing.
 *
 * @param tag the tag that belongs on it
 * @param modelCode its model
 * @param unitSeed what makes it this unit
 * @param ageYears its age on the night
 */
record PhysicalUnit(AssetTag tag, String modelCode, long unitSeed, double ageYears) {
    VirtualCabinet healthy(ModelBook book) {
        return VirtualCabinet.produced(book, modelCode, unitSeed, ageYears);
    }
}
