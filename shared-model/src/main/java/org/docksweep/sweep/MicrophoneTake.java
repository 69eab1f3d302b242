package org.docksweep.sweep;

/**
 * The microphone channel of a capture made ready: impulse responses of all sweeps from the same transforms as the
 * curves, the samples with hum taken off, and the noise of the silence before. Arrays are handed out for speed, must
 * not be changed, and are good while the take is read ({@link SoundReader}): the next analysis works on them.
 */
public final class MicrophoneTake {
    private final PreparedCapture capture;
    private final AcousticResponse response;
    private final boolean[] calm;
    private final int channel;

    MicrophoneTake(PreparedCapture capture, AcousticResponse response, boolean[] calm) {
        this.capture = capture;
        this.response = response;
        this.calm = calm.clone();
        this.channel = capture.channel(ChannelRole.MICROPHONE);
    }

    /**
     * The sweep.
     *
     * @return the signal
     */
    public SweepSignal signal() {
        return capture.signal;
    }

    /**
     * Number of sweeps.
     *
     * @return sweeps, at least 1
     */
    public int sweeps() {
        return capture.plan.repeats();
    }

    /**
     * Whether a sweep is free of knocks and dropouts.
     *
     * @param sweep sweep number from 0
     * @return true if so
     */
    public boolean calm(int sweep) {
        return calm[sweep];
    }

    /**
     * Impulse response of a sweep in Pa/V, circular; the response of order n sits {@code L ln n} before the linear one.
     *
     * @param sweep sweep number from 0
     * @return the response, not a copy
     */
    public double[] response(int sweep) {
        return capture.responses[sweep][channel];
    }

    /**
     * Index in the response at which sound would arrive without any way to travel.
     *
     * @return index
     */
    public int origin() {
        return capture.pad;
    }

    /**
     * Index in the response at which the sound arrives.
     *
     * @return index
     */
    public int arrival() {
        return response.arrival();
    }

    /**
     * Level and noise of the linear response, the curve itself.
     *
     * @return the curve
     */
    public AcousticCurve curve() {
        return response.curve();
    }

    /**
     * Phase of pressure over voltage with the delay of {@link #arrival()} taken off.
     *
     * @return radian at the curve's frequencies
     */
    public double[] phaseRad() {
        return response.phaseRad();
    }

    /**
     * Share of the points clearly heard at which the sweeps do not agree with each other.
     *
     * @return 0 to 1
     */
    public double disturbed() {
        return response.disturbed();
    }

    /**
     * Samples of the channel, in pascals, mean and hum taken off.
     *
     * @return samples, not a copy; perhaps zeros behind them
     */
    public double[] pascals() {
        return capture.channels[channel];
    }

    /**
     * Frame at which a sweep begins in the samples, without the way of the sound.
     *
     * @param sweep sweep number from 0
     * @return frame
     */
    public int start(int sweep) {
        return capture.start(sweep);
    }

    /**
     * Frames of silence at the start of the samples.
     *
     * @return frames
     */
    public int silence() {
        return capture.silence;
    }

    /**
     * Noise of the silence per sample: the variance within a band is {@code 2 / fs} times its integral.
     *
     * @param frequencyHz frequency
     * @return squared pascals
     */
    public double noisePower(double frequencyHz) {
        return capture.noise.power(channel, frequencyHz);
    }

    /**
     * A large array to work on, from those of former takes.
     *
     * @param length its length
     * @return zeros; good as long as the take
     */
    public double[] room(int length) {
        return capture.workspace.zeros(length);
    }

    /**
     * Gives an array back that is not needed any more: one of {@link #room} or {@link #resweep}.
     *
     * @param array nobody may use it afterwards
     */
    public void giveBack(double[] array) {
        capture.workspace.giveBack(array);
    }

    /**
     * Sends the sweep through part of its impulse response: what the microphone would have heard of that part of it.
     * Above the sweep's own band, where there is no response, the samples themselves are taken.
     *
     * @param sweep sweep number from 0
     * @param part impulse response in Pa/V of the size of {@link #response}, circular; is overwritten
     * @param weights factors per bin of the transform, one array of half the response's size for each signal wanted
     * @return one signal per array of weights, in pascals, from {@link #origin()} frames before the sweep's begin on
     */
    public double[][] resweep(int sweep, double[] part, double[][] weights) {
        double crossHz = 0.97 * signal().stopHz();
        double[] record = null;
        if (crossHz < 0.4 * signal().sampleRateHz()) {
            record = capture.workspace.zeros(part.length);
            int from = start(sweep) - origin();
            int first = Math.max(0, from);
            int wanted = origin() + signal().frames() + capture.plan.tailFrames();
            int last = Math.min(pascals().length, from + Math.min(wanted, part.length));
            System.arraycopy(pascals(), first, record, first - from, Math.max(0, last - first));
        }
        double[][] signals = capture.deconvolver.resweep(part, record, crossHz, weights, capture.workspace);
        if (record != null) {
            capture.workspace.giveBack(record);
        }
        return signals;
    }
}
