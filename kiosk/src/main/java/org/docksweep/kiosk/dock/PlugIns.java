package org.docksweep.kiosk.dock;

import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.ReadingKind;
import org.docksweep.kiosk.rig.PlugLog;
import org.docksweep.kiosk.rig.RigEntry;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** What a check-in says of the dock's plug: one plug-in for each test point that passed and whose curve tells the contact. */
final class PlugIns {
    private static final Logger LOG = LoggerFactory.getLogger(PlugIns.class);

    private PlugIns() {}

    static List<RigEntry.PlugIn> of(Draft draft, String operator, Instant at) {
        if (draft.judgement == null) {
            return List.of();
        }
        return draft.judgement.points().stream()
                .filter(point -> point.verdict() == Verdict.PASS)
                .flatMap(point -> point.readings().stream())
                .filter(reading -> reading.kind() == ReadingKind.PLUG_CONTACT)
                .map(reading -> new RigEntry.PlugIn(
                        at,
                        operator,
                        draft.cabinet.tag(),
                        reading.testPointCode(),
                        draft.model.testPoint(reading.testPointCode()).contacts(),
                        reading.value(),
                        reading.standardUncertainty()))
                .toList();
    }

    /** Keeps them in order; words what could not be kept. */
    static Optional<Reason> keep(List<RigEntry.PlugIn> plugIns, PlugLog log) {
        try {
            for (RigEntry.PlugIn plugIn : plugIns) {
                log.append(plugIn);
            }
            return Optional.empty();
        } catch (IOException e) {
            LOG.warn("A plug-in was not kept", e);
            return Optional.of(Reason.of("dock-plug-not-kept", String.valueOf(e.getMessage())));
        }
    }
}
