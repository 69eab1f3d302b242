package org.docksweep.demo.physics;

import java.util.List;
import org.docksweep.fleet.DriverKind;
import org.docksweep.fleet.MotionalResonance;

/**
 * One physical driver as it really is at 20 C, before faults. Mechanical values hold for cones; compression drivers
 * carry their motional resonances on the horn instead.
 *
 * @param positionCode where it sits
 * @param kind construction
 * @param dcResistanceOhm Re at 20 C
 * @param inductance blocked inductance
 * @param forceFactorTm Bl in tesla metres
 * @param movingMassKg moving mass, cones
 * @param stiffnessNPerM suspension stiffness at the resonance, cones
 * @param viscousLossNsPerM viscous part of the mechanical loss, cones
 * @param creep relative change of compliance per decade of frequency (Knudsen and Jensen, JAES 41, 1993, form from
 *     memory), cones
 * @param freeResonanceHz fs of this unit, cones
 * @param areaM2 piston area
 * @param resonances motional terms on the horn, compression drivers
 * @param soundPaPerA pressure at 1 m per ampere in the pass band, compression drivers
 * @param maxExcursionM one-way excursion limit
 * @param breakupHz roll-off of the cone or front chamber
 */
record TrueDriver(
        String positionCode,
        DriverKind kind,
        double dcResistanceOhm,
        BlockedInductance inductance,
        double forceFactorTm,
        double movingMassKg,
        double stiffnessNPerM,
        double viscousLossNsPerM,
        double creep,
        double freeResonanceHz,
        double areaM2,
        List<MotionalResonance> resonances,
        double soundPaPerA,
        double maxExcursionM,
        double breakupHz) {}
