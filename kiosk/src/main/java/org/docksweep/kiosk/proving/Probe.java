package org.docksweep.kiosk.proving;

import java.util.List;
import java.util.Optional;
import org.docksweep.contract.ProvingRig;
import org.docksweep.contract.ProvingUnit;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.gate.PointReference;
import org.docksweep.judge.Prompt;
import org.docksweep.kiosk.dock.RealGate;
import org.docksweep.kiosk.dock.SocketCheck;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepAnalysis;

/** The quiet probe before a sweep, answered as the dock does. */
final class Probe {
    private Probe() {}

    /**
     * What the dock does next.
     *
     * @param prompt what it asks for first, or NONE
     * @param fullLevel whether the sweep that follows goes at full level
     */
    record Answer(Prompt prompt, boolean fullLevel) {}

    static Answer of(
            ProvingRig rig,
            RealGate gate,
            ProvingHouse house,
            List<PointReference> references,
            CabinetModel model,
            TestPoint point,
            String occasion,
            ProvingUnit unit)
            throws RigException {
        rig.plug(occasion + "-probe", unit, point.code());
        SweepAnalysis seen = gate.analyse(rig.play(gate.probe(point, rig.sampleRateHz()), point.kind(), share -> {}));
        if (point.kind() == TestPointKind.LINE_INPUT) {
            return new Answer(Prompt.NONE, true);
        }
        if (seen.load() == SweepAnalysis.Load.OPEN) {
            return new Answer(Prompt.PLUG_IN, false);
        }
        if (seen.impedance() == null || seen.load() != SweepAnalysis.Load.PRESENT) {
            return new Answer(Prompt.NONE, seen.load() == SweepAnalysis.Load.PRESENT);
        }
        List<PointReference> ofModel = references.stream()
                .filter(r -> r.cabinetModelCode().equals(model.code()))
                .toList();
        Optional<String> other =
                SocketCheck.otherSocket(house.calibration().correct(seen.impedance()), point.code(), ofModel);
        return new Answer(other.isPresent() ? Prompt.CHECK_SOCKET : Prompt.NONE, other.isEmpty());
    }
}
