package org.docksweep.demo.rig;

import java.util.Random;
import org.hipparchus.complex.Complex;

/**
 * The rig between drive and samples: constant for one rig, a little wrong everywhere, as real ones are. Nominal factors
 * in capture headers know nothing of these errors, so only calibration can remove them.
 *
 * @param amplifierGain true gain over nominal
 * @param amplifierOhm output resistance of the amplifier
 * @param senseOhm true sense resistance
 * @param voltageGain true over nominal gain of the voltage channel
 * @param currentGain true over nominal gain of the current channel
 * @param microphoneGain true over nominal gain of the microphone channel
 * @param voltageCornerHz AC coupling of the voltage channel; 0 for none
 * @param currentCornerHz AC coupling of the current channel; 0 for none
 * @param voltageRollOffHz first-order roll-off of the voltage channel
 * @param currentRollOffHz first-order roll-off of the current channel
 * @param leadOhm resistance of the lead without contacts
 * @param leadHenry inductance of the lead
 * @param leadFarad capacitance of the lead
 * @param converterNoiseFs converter noise, rms, in full scale
 * @param humFs mains hum in the voltage channel, peak, in full scale
 * @param distortion whether drivers and air distort a little
 */
record Electronics(
        double amplifierGain,
        double amplifierOhm,
        double senseOhm,
        double voltageGain,
        double currentGain,
        double microphoneGain,
        double voltageCornerHz,
        double currentCornerHz,
        double voltageRollOffHz,
        double currentRollOffHz,
        double leadOhm,
        double leadHenry,
        double leadFarad,
        double converterNoiseFs,
        double humFs,
        boolean distortion) {

    /** Volts at full scale, nominal. */
    static final double VOLTS_FULL_SCALE = 10;
    /** Amperes at full scale, nominal. */
    static final double AMPERES_FULL_SCALE = 5;
    /** Pascals at full scale, nominal. */
    static final double PASCALS_FULL_SCALE = 40;
    /** Output resistance of the line output that feeds powered cabinets. */
    static final double LINE_OHM = 100;

    private static final double LEAD_LENGTH_M = 10;
    private static final double LEAD_HENRY_PER_M = 0.6e-6;
    private static final double LEAD_FARAD_PER_M = 100e-12;
    private static final double LEAD_OHM = 0.11;

    static Electronics drawn(long seed) {
        Random random = new Random(seed ^ 0x5DEECE66DL);
        return new Electronics(
                1 + 0.01 * random.nextGaussian(),
                0.05 + 0.04 * random.nextDouble(),
                0.5,
                1 + 0.025 * (2 * random.nextDouble() - 1),
                1 + 0.030 * (2 * random.nextDouble() - 1),
                1 + 0.04 * (2 * random.nextDouble() - 1),
                0.6 + 0.5 * random.nextDouble(),
                0.6 + 0.5 * random.nextDouble(),
                150_000 + 80_000 * random.nextDouble(),
                150_000 + 80_000 * random.nextDouble(),
                LEAD_OHM + 0.03 * random.nextDouble(),
                LEAD_LENGTH_M * LEAD_HENRY_PER_M,
                LEAD_LENGTH_M * LEAD_FARAD_PER_M,
                Math.pow(10, -106 / 20.0),
                Math.pow(10, -82 / 20.0),
                true);
    }

    /** The same rig with another converter noise, rms, in dB re full scale. */
    Electronics withNoiseDb(double converterNoiseDb) {
        return new Electronics(
                amplifierGain,
                amplifierOhm,
                senseOhm,
                voltageGain,
                currentGain,
                microphoneGain,
                voltageCornerHz,
                currentCornerHz,
                voltageRollOffHz,
                currentRollOffHz,
                leadOhm,
                leadHenry,
                leadFarad,
                Math.pow(10, converterNoiseDb / 20),
                humFs,
                distortion);
    }

    /** A rig without any error or noise, with a lead of no resistance, for checks of the rendering itself. */
    static Electronics ideal() {
        double never = 1e12;
        return new Electronics(1, 0.05, 0.5, 1, 1, 1, 0, 0, never, never, 0, 0, 0, 0, 0, false);
    }

    Complex voltageResponse(double frequencyHz) {
        return response(frequencyHz, voltageGain, voltageCornerHz, voltageRollOffHz);
    }

    Complex currentResponse(double frequencyHz) {
        return response(frequencyHz, currentGain, currentCornerHz, currentRollOffHz);
    }

    Complex microphoneResponse(double frequencyHz) {
        return response(frequencyHz, microphoneGain, 8, 32_000);
    }

    private static Complex response(double frequencyHz, double gain, double cornerHz, double rollOffHz) {
        Complex low = new Complex(1, -cornerHz / frequencyHz).reciprocal();
        Complex high = new Complex(1, frequencyHz / rollOffHz).reciprocal();
        return low.multiply(high).multiply(gain);
    }

    double sourceOhm() {
        return amplifierOhm + senseOhm;
    }

    Complex leadOhmAt(double frequencyHz) {
        return new Complex(leadOhm, 2 * Math.PI * frequencyHz * leadHenry);
    }
}
