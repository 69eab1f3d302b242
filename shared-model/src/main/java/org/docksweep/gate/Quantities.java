package org.docksweep.gate;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.docksweep.circuit.CircuitFit;
import org.docksweep.circuit.CircuitParameter;
import org.docksweep.circuit.Copper;
import org.docksweep.circuit.FittedModel;
import org.docksweep.circuit.FittedModel.Estimate;
import org.docksweep.circuit.MeasuringFit;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.EnclosureKind;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.NetworkElement;
import org.docksweep.fleet.TestPoint;
import org.docksweep.sweep.ImpedanceCurve;

/**
 * What a calibrated curve says of each driver and box, with standard uncertainties: read off a model fitted to the curve
 * ({@link MeasuringFit}), never off grid points. Places of peaks and dips are extrema of the fitted magnitude, found to parts
 * in 1e9.
 *
 * <p>To what the noise leaves unsure comes what the model leaves out, as relative standard uncertainties found by simulation
 * (accuracy study of the demo's virtual cabinets, seed 5001; the study in docs/figures.md uses other seeds):
 * {@link #PEAK_RELATIVE} and its neighbours. What the model leaves is nearly the same for all units of a model.
 */
public final class Quantities {
    /** Left by the model in the place of a single peak; those of a vented box's two peaks are as good as the fit says. */
    static final double PEAK_RELATIVE = 2.7e-4;
    /** Left by the model in the place of the dip of a vented box. */
    static final double DIP_RELATIVE = 1.1e-4;
    /** Left by the model in the tuning. */
    static final double TUNING_RELATIVE = 6.5e-4;
    /** Left by the model in the lowest magnitude. */
    static final double LOWEST_RELATIVE = 8e-4;
    /** Left by the model and by the drivers' own distortion in magnitudes. */
    static final double MAGNITUDE_RELATIVE = 2.5e-3;
    /** Left by the unknown inductance in the resistance extrapolated to DC, without and with a network. */
    static final double RESISTANCE_RELATIVE = 2.5e-3;

    private static final double NETWORK_RESISTANCE_RELATIVE = 1e-2;
    /** Standard uncertainty of a coil's temperature when the air's is known, in kelvin: cold trucks, loud shows (no source). */
    static final double COIL_NEAR_AIR_KELVIN = 8;
    /** The same when nothing is known, around 20 C (no source). */
    static final double COIL_ANYWHERE_KELVIN = 15;
    /** A fit worse than this says nothing reliable: the curve is not this circuit's. */
    private static final double WORST_REDUCED_CHI2 = 25;

    private static final double REFERENCE_CELSIUS = 20;

    private final CabinetModel model;
    private final TestPoint point;
    private final FittedModel fit;
    private final Knowledge knowledge;
    private final double lowestHz;
    private final double highestHz;
    private final boolean plain;
    private final List<Quantity> found = new ArrayList<>();

    private Quantities(
            CabinetModel model, TestPoint point, Knowledge knowledge, FittedModel fit, ImpedanceCurve curve) {
        this.model = model;
        this.point = point;
        this.knowledge = knowledge;
        this.fit = fit;
        this.lowestHz = curve.frequencyHz()[0];
        this.highestHz = curve.frequencyHz()[curve.size() - 1];
        this.plain = withoutNetwork(point);
    }

    /**
     * Measures.
     *
     * @param book models
     * @param model cabinet model
     * @param point test point with terminals
     * @param curve calibrated impedance
     * @param ambientCelsius air temperature, or null when nobody looked
     * @param start circuit parameters to start from, or null to find them first
     * @return quantities; empty when the curve is not that of this circuit (then no number read off it would mean what
     *     its name says)
     */
    public static List<Quantity> of(
            ModelBook book,
            CabinetModel model,
            TestPoint point,
            ImpedanceCurve curve,
            Double ambientCelsius,
            double[] start) {
        Knowledge knowledge = Knowledge.nominal(book, model, point).forMeasuring();
        double[] from = start != null
                ? knowledge.pinned(start)
                : CircuitFit.fit(knowledge.circuit(), knowledge.dataOf(curve), knowledge.prior(), null)
                        .x();
        FittedModel fit = MeasuringFit.fit(
                knowledge.circuit(), curve, knowledge.prior(), from, withoutNetwork(point), point.ratedImpedanceOhm());
        if (!(fit.reducedChi2() <= WORST_REDUCED_CHI2)) {
            return List.of();
        }
        return new Quantities(model, point, knowledge, fit, curve).measure(ambientCelsius);
    }

    /**
     * One quantity of a list.
     *
     * @param quantities list
     * @param kind kind
     * @return the first of its kind
     */
    public static Optional<Quantity> first(List<Quantity> quantities, Quantity.Kind kind) {
        return quantities.stream().filter(q -> q.kind() == kind).findFirst();
    }

    private static boolean withoutNetwork(TestPoint point) {
        return point.elements().stream().allMatch(NetworkElement.Driver.class::isInstance);
    }

    private List<Quantity> measure(Double ambientCelsius) {
        resistances(ambientCelsius);
        peaks();
        for (CircuitParameter parameter : knowledge.circuit().parameters()) {
            String id = parameter.id();
            if (id.endsWith(".tuning")) {
                add(Quantity.Kind.TUNING, owner(id), fit.parameter(id), TUNING_RELATIVE);
            } else if (id.endsWith(".Qms")) {
                motion(owner(id));
            } else if (plain && id.endsWith(".K")) {
                add(Quantity.Kind.INDUCTANCE_K, owner(id), fit.parameter(id), 0);
                add(Quantity.Kind.INDUCTANCE_EXPONENT, owner(id), fit.parameter(owner(id) + ".n"), 0);
            }
        }
        lowest();
        return List.copyOf(found);
    }

    private void resistances(Double ambientCelsius) {
        Estimate total = fit.dcResistanceOhm();
        if (plain && total != null) {
            add(Quantity.Kind.TERMINAL_RESISTANCE, point.code(), total, RESISTANCE_RELATIVE);
            Quantity measured = found.get(found.size() - 1);
            double celsius = ambientCelsius == null ? REFERENCE_CELSIUS : ambientCelsius;
            double kelvin = ambientCelsius == null ? COIL_ANYWHERE_KELVIN : COIL_NEAR_AIR_KELVIN;
            double at20C = Copper.referredTo20C(measured.value(), celsius);
            double relative = Math.hypot(
                    measured.standardUncertainty() / measured.value(),
                    Copper.PER_KELVIN * kelvin / (1 + Copper.PER_KELVIN * (celsius - REFERENCE_CELSIUS)));
            found.add(new Quantity(Quantity.Kind.TERMINAL_RESISTANCE_20C, point.code(), at20C, at20C * relative));
        }
        if (!plain) {
            for (String position : point.positionCodes()) {
                Estimate coil = fit.parameter(position + ".Re");
                add(Quantity.Kind.COIL_RESISTANCE_20C, position, coil, NETWORK_RESISTANCE_RELATIVE);
            }
        }
    }

    /** Qes = Re / Z0 with Z0 = Res / Qms; Qts = Qms Qes / (Qms + Qes). */
    private void motion(String position) {
        add(Quantity.Kind.FREE_RESONANCE, position, fit.parameter(position + ".fs"), MAGNITUDE_RELATIVE);
        Estimate qms = fit.mechanicalQ(position);
        Estimate qes = fit.product(new String[] {position + ".Re", position + ".Z0"}, 1, -1);
        add(Quantity.Kind.QMS, position, qms, MAGNITUDE_RELATIVE);
        add(Quantity.Kind.QES, position, qes, RESISTANCE_RELATIVE);
        double qts = qms.value() * qes.value() / (qms.value() + qes.value());
        double byQms = Math.pow(qts / qms.value(), 2) * qms.standardUncertainty();
        double byQes = Math.pow(qts / qes.value(), 2) * qes.standardUncertainty();
        // Qms and Qes are nearly unrelated: one sits in the height of the peak, the other in its slopes.
        add(Quantity.Kind.QTS, position, new Estimate(qts, Math.hypot(byQms, byQes)), RESISTANCE_RELATIVE);
    }

    private void peaks() {
        model.enclosures().stream()
                .filter(box -> point.positionCodes().containsAll(box.positionCodes()))
                .forEach(box -> {
                    boolean behindNetwork = !plain && box.kind() == EnclosureKind.HORN;
                    if (box.kind() == EnclosureKind.VENTED) {
                        vented(box.id(), fit.parameter(box.id() + ".tuning").value());
                    } else if (!behindNetwork) {
                        single(box.positionCodes().get(0));
                    }
                });
    }

    private void vented(String box, double tuningHz) {
        double lower = Extrema.nearest(fit::magnitudeOhm, tuningHz, lowestHz, -1, true);
        double upper = Extrema.nearest(fit::magnitudeOhm, tuningHz, highestHz, 1, true);
        if (Double.isNaN(lower) || Double.isNaN(upper)) {
            return;
        }
        double dip = Extrema.between(fit::magnitudeOhm, lower, upper, false);
        add(Quantity.Kind.LOWER_PEAK, box, fit.placeOfExtremum(lower), 0);
        add(Quantity.Kind.DIP, box, fit.placeOfExtremum(dip), DIP_RELATIVE);
        add(Quantity.Kind.UPPER_PEAK, box, fit.placeOfExtremum(upper), 0);
        double larger = fit.magnitudeOhm(lower) > fit.magnitudeOhm(upper) ? lower : upper;
        add(Quantity.Kind.PEAK_MAGNITUDE, box, fit.magnitudeWithUncertainty(larger), MAGNITUDE_RELATIVE);
    }

    private void single(String position) {
        Estimate nominal = fit.parameter(position + ".fs") == null
                ? fit.parameter(position + ".f1")
                : fit.parameter(position + ".fs");
        double peak = Extrema.between(
                fit::magnitudeOhm,
                Math.max(lowestHz, 0.6 * nominal.value()),
                Math.min(highestHz, 2.6 * nominal.value()),
                true);
        if (Double.isNaN(peak)) {
            return;
        }
        add(Quantity.Kind.PEAK, position, fit.placeOfExtremum(peak), PEAK_RELATIVE);
        add(Quantity.Kind.PEAK_MAGNITUDE, position, fit.magnitudeWithUncertainty(peak), MAGNITUDE_RELATIVE);
    }

    private void lowest() {
        double at = Extrema.lowest(fit::magnitudeOhm, lowestHz, highestHz);
        add(Quantity.Kind.LOWEST, point.code(), fit.magnitudeWithUncertainty(at), LOWEST_RELATIVE);
        Estimate share = fit.magnitudeWithUncertainty(at).times(1 / point.ratedImpedanceOhm());
        add(Quantity.Kind.LOWEST_OVER_RATED, point.code(), share, LOWEST_RELATIVE);
    }

    private void add(Quantity.Kind kind, String owner, Estimate estimate, double relative) {
        found.add(new Quantity(
                kind,
                owner,
                estimate.value(),
                Math.hypot(estimate.standardUncertainty(), relative * Math.abs(estimate.value()))));
    }

    private static String owner(String parameterId) {
        return parameterId.substring(0, parameterId.lastIndexOf('.'));
    }
}
