package org.docksweep.kiosk.proving;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.docksweep.contract.ProvingGround;
import org.docksweep.contract.ProvingRig;
import org.docksweep.contract.ProvingUnit;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.gate.LimitSet;
import org.docksweep.gate.PointReference;
import org.docksweep.gate.ReferenceTeacher;
import org.docksweep.gate.SharedScatter;
import org.docksweep.rigcal.RigCalibration;
import org.docksweep.sweep.RigException;

/**
 * What the house knows before the returns: a calibrated rig, what it was taught from a few known-good units of each model, and
 * limits.
 *
 * <p>One teaching of a model shares its luck with every return judged by it: five units may all lie on one side of the mean. Several
 * teachings of other units make a row of the table tell of the gate and not of five units.
 *
 * @param book models
 * @param calibration calibration of the rig
 * @param teachings what was taught, each time of all models and from other units
 * @param limits limits
 */
record ProvingHouse(ModelBook book, RigCalibration calibration, List<Teaching> teachings, LimitSet limits) {
    private static final double TEACHING_CELSIUS = 20;
    private static final double TEACHING_NOISE_DB = 45;
    /** Good units are numbered from here, teaching after teaching; returns begin above. */
    private static final int MOST_GOOD_UNITS = 20;

    /**
     * What one set of good units taught.
     *
     * @param references references of all models
     * @param plainGates the two gates to compare with, by model and test point
     */
    record Teaching(List<PointReference> references, Map<String, PlainGates> plainGates) {}

    static ProvingHouse opened(ProvingGround ground, ProvingOptions options) throws RigException {
        ModelBook book = ground.book(options.models(), options.seed());
        try (ProvingRig rig = ground.rig(options.seed(), options.converterNoiseDb())) {
            RigCalibration calibration = Measured.calibrate(rig);
            List<Teaching> teachings = new ArrayList<>();
            for (int t = 0; t < options.teachings(); t++) {
                teachings.add(taught(ground, options, book, rig, calibration, t));
            }
            return new ProvingHouse(book, calibration, List.copyOf(teachings), options.limits());
        }
    }

    private static Teaching taught(
            ProvingGround ground,
            ProvingOptions options,
            ModelBook book,
            ProvingRig rig,
            RigCalibration calibration,
            int teaching)
            throws RigException {
        List<PointReference> references = new ArrayList<>();
        Map<String, PlainGates> plain = new HashMap<>();
        for (CabinetModel model : book.cabinetModels()) {
            for (TestPoint point : model.testPoints()) {
                List<Measured> good = new ArrayList<>();
                List<Double> meterOhm = new ArrayList<>();
                for (int n = 0; n < options.goodUnits(); n++) {
                    int number = MOST_GOOD_UNITS * teaching + n;
                    ProvingUnit unit = goodUnit(options, model.code(), number);
                    String occasion = "good-" + model.code() + "-" + number;
                    good.add(Measured.clean(rig, calibration, occasion, unit, point));
                    if (point.kind() != TestPointKind.LINE_INPUT) {
                        meterOhm.add(PlainGates.meterOhm(ground, unit, point.code()));
                    }
                }
                List<ReferenceTeacher.Unit> lessons = good.stream()
                        .map(m -> new ReferenceTeacher.Unit(m.impedance(), m.acoustic(), m.ambientCelsius()))
                        .toList();
                references.add(ReferenceTeacher.teach(book, model.code(), point.code(), lessons));
                if (point.kind() != TestPointKind.LINE_INPUT) {
                    plain.put(key(model.code(), point.code()), PlainGates.of(meterOhm, good));
                }
            }
        }
        return new Teaching(SharedScatter.over(references), Map.copyOf(plain));
    }

    /** Known-good units of a model; the first also stands for the model where ambiguity is computed. */
    static ProvingUnit goodUnit(ProvingOptions options, String modelCode, int n) {
        return new ProvingUnit(
                modelCode,
                options.seed() * 1_000_003L + n,
                1.5,
                null,
                0,
                new ProvingUnit.Climate(TEACHING_CELSIUS, TEACHING_CELSIUS, TEACHING_CELSIUS, TEACHING_NOISE_DB));
    }

    static String key(String modelCode, String testPointCode) {
        return modelCode + " " + testPointCode;
    }
}
