package org.docksweep.suspect;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import org.docksweep.circuit.CircuitFit;
import org.docksweep.circuit.CurveData;
import org.docksweep.circuit.PointCircuit;
import org.docksweep.fleet.Require;
import org.docksweep.sweep.ImpedanceCurve;

/**
 * What the terminals would show if a suspect were the cause: its circuit at its most probable parameters, with what healthy units
 * of the model are known to show besides their circuit.
 *
 * @param frequencyHz rising frequencies
 * @param magnitudeOhm impedance magnitude at each, five digits
 */
public record PredictedCurve(List<Double> frequencyHz, List<Double> magnitudeOhm) {
    private static final MathContext DIGITS = new MathContext(5);

    public PredictedCurve {
        frequencyHz = Require.copy("predicted frequencyHz", frequencyHz);
        magnitudeOhm = Require.copy("predicted magnitudeOhm", magnitudeOhm);
        if (frequencyHz.size() != magnitudeOhm.size()) {
            throw new IllegalArgumentException("predicted curve: " + frequencyHz.size() + " frequencies, but "
                    + magnitudeOhm.size() + " magnitudes");
        }
    }

    /** The measured curve, moved by what the fit leaves over: offsets of the model need no second look-up. */
    static PredictedCurve of(ImpedanceCurve measured, CurveData data, PointCircuit circuit, double[] x) {
        double[] fitted = CircuitFit.predict(circuit, data.frequencyHz(), x)[0];
        double[] measuredHz = measured.frequencyHz();
        double[] measuredOhm = measured.magnitudesOhm();
        List<Double> hz = new ArrayList<>();
        List<Double> ohm = new ArrayList<>();
        int at = 0;
        for (int i = 0; i < data.size(); i++) {
            while (at < measuredHz.length - 1 && measuredHz[at] < data.frequencyHz()[i]) {
                at++;
            }
            hz.add(rounded(data.frequencyHz()[i]));
            ohm.add(rounded(measuredOhm[at] * StrictMath.exp(fitted[i] - data.logOhm()[i])));
        }
        return new PredictedCurve(hz, ohm);
    }

    private static double rounded(double value) {
        return new BigDecimal(value).round(DIGITS).doubleValue();
    }
}
