package org.docksweep.contract;

import java.util.List;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverModel;
import org.docksweep.gate.Baseline;
import org.docksweep.gate.PointReference;

/**
 * What a dispute about a repair needs: the cabinet when it last passed, when it failed, what was found, and the proof.
 *
 * @param file the job
 * @param model cabinet model
 * @param drivers driver models of its positions
 * @param lastPass last check-in that passed before the job was opened, or null when none is on record
 * @param before newest baselines taken before the job was opened, one per test point
 * @param failure check-in that opened the job
 * @param lastOrder order it was out on when it broke, or null when none is on record
 * @param references references of the model
 */
public record JobEvidence(
        BenchJobFile file,
        CabinetModel model,
        List<DriverModel> drivers,
        CheckInBody lastPass,
        List<Baseline> before,
        CheckInBody failure,
        Timeline.LastOrder lastOrder,
        List<PointReference> references) {}
