package org.docksweep.demo.physics;

import java.util.ArrayList;
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
        double breakupHz) {

    /**
     * Another horn loads a diaphragm otherwise: of the bench's test horn it is taken that the main resonance sits lower and
     * rings a little longer, and that its own modes lie elsewhere. Invented factors of ordinary size, no source.
     */
    private static final double TEST_HORN_MAIN_HZ = 0.95;

    private static final double TEST_HORN_MAIN_Q = 1.1;
    private static final double TEST_HORN_MODE_HZ = 1.06;
    private static final double TEST_HORN_MODE_PEAK = 0.85;

    /** The same driver on the bench's test horn; a cone is the same, its values hold in free air. */
    TrueDriver onTestHorn() {
        List<MotionalResonance> there = new ArrayList<>();
        for (MotionalResonance term : resonances) {
            there.add(
                    there.isEmpty()
                            ? new MotionalResonance(
                                    TEST_HORN_MAIN_HZ * term.frequencyHz(),
                                    TEST_HORN_MAIN_Q * term.q(),
                                    TEST_HORN_MAIN_Q * term.peakResistanceOhm())
                            : new MotionalResonance(
                                    TEST_HORN_MODE_HZ * term.frequencyHz(),
                                    term.q(),
                                    TEST_HORN_MODE_PEAK * term.peakResistanceOhm()));
        }
        return new TrueDriver(
                positionCode,
                kind,
                dcResistanceOhm,
                inductance,
                forceFactorTm,
                movingMassKg,
                stiffnessNPerM,
                viscousLossNsPerM,
                creep,
                freeResonanceHz,
                areaM2,
                List.copyOf(there),
                soundPaPerA,
                maxExcursionM,
                breakupHz);
    }
}
