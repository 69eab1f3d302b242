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
import org.docksweep.rigcal.RigCalibration;
import org.docksweep.sweep.RigException;

/**
 * What the house knows before the returns: a calibrated rig, references taught from a few known-good units of each model,
 * limits, and what two plain gates learned from the same units.
 *
 * @param book models
 * @param calibration calibration of the rig
 * @param references references of all models
 * @param limits limits
 * @param plainGates the two gates to compare with, by model and test point
 */
record ProvingHouse(
        ModelBook book,
        RigCalibration calibration,
        List<PointReference> references,
        LimitSet limits,
        Map<String, PlainGates> plainGates) {

    private static final double TEACHING_CELSIUS = 20;
    private static final double TEACHING_NOISE_DB = 45;

    static ProvingHouse opened(ProvingGround ground, ProvingOptions options) throws RigException {
        ModelBook book = ground.book(options.models(), options.seed());
        List<PointReference> references = new ArrayList<>();
        Map<String, PlainGates> plain = new HashMap<>();
        try (ProvingRig rig = ground.rig(options.seed(), options.converterNoiseDb())) {
            RigCalibration calibration = Measured.calibrate(rig);
            for (CabinetModel model : book.cabinetModels()) {
                for (TestPoint point : model.testPoints()) {
                    List<Measured> good = new ArrayList<>();
                    List<Double> meterOhm = new ArrayList<>();
                    for (int n = 0; n < options.goodUnits(); n++) {
                        ProvingUnit unit = goodUnit(options, model.code(), n);
                        String occasion = "good-" + model.code() + "-" + n;
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
            return new ProvingHouse(book, calibration, List.copyOf(references), options.limits(), Map.copyOf(plain));
        }
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
