package org.docksweep.kiosk.proving;

import java.util.Set;
import org.docksweep.contract.ProvingFaultKind;
import org.docksweep.contract.ProvingGround;
import org.docksweep.fleet.Require;
import org.docksweep.gate.LimitSet;

/**
 * What a proving run is made of.
 *
 * @param models which cabinet models
 * @param seed seed of everything
 * @param returns number of returns, 1 to 1,000,000
 * @param kinds the only faults dealt, in turns with healthy cabinets; empty for all and everything else
 * @param knowing what the gate knows of the returned cabinets; both kinds share the returns
 * @param severities severities of the soft faults
 * @param hallNoiseDb range of the hall's noise, dB re 20 uPa
 * @param converterNoiseDb noise of the rig's converter, dB re full scale
 * @param celsius range of the air at the dock
 * @param unknownShare share of returns whose model has no reference, 0 to 0.5
 * @param recordedShare share of returns that are judged from encoded recordings, 0 to 1
 * @param goodUnits known-good units that teach each reference, 1 to 20
 * @param teachings how often each model is taught, each time from other good units; a return draws one, 1 to 24
 * @param threads worker threads, 1 to 64
 * @param limits limits to judge with
 */
public record ProvingOptions(
        ProvingGround.Models models,
        long seed,
        int returns,
        Set<ProvingFaultKind> kinds,
        Set<Knowing> knowing,
        Severities severities,
        Range hallNoiseDb,
        double converterNoiseDb,
        Range celsius,
        double unknownShare,
        double recordedShare,
        int goodUnits,
        int teachings,
        int threads,
        LimitSet limits) {

    /** Seeds of held-back units start here; nobody tunes on them. */
    private static final long HELD_BACK_FROM = 100_000;

    /**
     * A range.
     *
     * @param low low end
     * @param high high end, not below the low end
     */
    public record Range(double low, double high) {
        public Range {
            if (!(low <= high)) {
                throw new IllegalArgumentException("a range must not end below its start, but runs from " + low + " to "
                        + high + "; give LOW:HIGH");
            }
        }
    }

    public ProvingOptions {
        Require.inRange("returns", returns, 1, 1_000_000);
        kinds = Set.copyOf(kinds);
        knowing = Set.copyOf(knowing);
        if (knowing.isEmpty()) {
            throw new IllegalArgumentException("a proving run needs baselines, references or both");
        }
        Require.inRange("converter noise in dB", converterNoiseDb, -140, -40);
        Require.inRange("hall noise in dB", hallNoiseDb.low(), 0, 110);
        Require.inRange("hall noise in dB", hallNoiseDb.high(), 0, 110);
        Require.inRange("temperature in C", celsius.low(), -15, 45);
        Require.inRange("temperature in C", celsius.high(), -15, 45);
        Require.inRange("unknown share", unknownShare, 0, 0.5);
        Require.inRange("recorded share", recordedShare, 0, 1);
        Require.inRange("good units", goodUnits, 1, 20);
        Require.inRange("teachings", teachings, 1, 24);
        Require.inRange("threads", threads, 1, 64);
        boolean held = models == ProvingGround.Models.HELD_BACK || models == ProvingGround.Models.ALL;
        if (held && seed < HELD_BACK_FROM) {
            throw new IllegalArgumentException("held-back models are proved with seeds from " + HELD_BACK_FROM
                    + " upwards, but the seed is " + seed);
        }
        if (models == ProvingGround.Models.TUNING && seed >= HELD_BACK_FROM) {
            throw new IllegalArgumentException("seeds from " + HELD_BACK_FROM
                    + " upwards are held back from tuning, but the seed is " + seed + "; take a smaller one");
        }
    }
}
