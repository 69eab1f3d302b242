package org.docksweep.demo.rig;

/**
 * Signals of a capture before noise and converter.
 *
 * @param volts voltage channel
 * @param amperes current channel
 * @param pascals microphone channel
 */
record Signals(double[] volts, double[] amperes, double[] pascals) {}
