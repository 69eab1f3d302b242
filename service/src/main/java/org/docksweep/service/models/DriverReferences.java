package org.docksweep.service.models;

import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.docksweep.fleet.BareDriver;
import org.docksweep.gate.PointReference;
import org.docksweep.service.store.StoredJson;
import org.docksweep.service.web.Check;
import org.docksweep.service.web.PutAnswer;
import org.docksweep.service.web.Refusal;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** References of bare drivers on the bench rig. */
@Service
@Transactional
class DriverReferences {
    private final DriverReferenceRows rows;
    private final Models models;
    private final Clock clock;

    DriverReferences(DriverReferenceRows rows, Models models, Clock clock) {
        this.rows = rows;
        this.models = models;
        this.clock = clock;
    }

    @Transactional(readOnly = true)
    List<PointReference> all() {
        return rows.newest().stream().map(DriverReferenceRow::reference).toList();
    }

    @Transactional(readOnly = true)
    PointReference find(String driverModelCode) {
        return rows.newest(driverModelCode)
                .orElseThrow(() -> Refusal.notFound(
                        "driverModel",
                        "driver model " + driverModelCode + " has no reference of the bare driver",
                        "Teach it from known-good units on the bench rig."))
                .reference();
    }

    /** Stores the next revision, unless the newest says the same. */
    PutAnswer<PointReference> put(String driverModelCode, PointReference reference) {
        models.driverModel(driverModelCode, "driverModel");
        String expected = BareDriver.modelCode(driverModelCode);
        new Check()
                .that(
                        expected.equals(reference.cabinetModelCode()),
                        "cabinetModelCode",
                        "must be " + expected + " for the bare driver of the address, but is "
                                + reference.cabinetModelCode())
                .that(
                        BareDriver.TEST_POINT.equals(reference.testPointCode()),
                        "testPointCode",
                        "must be " + BareDriver.TEST_POINT + " for a bare driver, but is " + reference.testPointCode())
                .refuseIfWrong();
        Optional<DriverReferenceRow> newest = rows.newest(driverModelCode);
        if (newest.isPresent() && newest.get().says(reference)) {
            return new PutAnswer<>(false, reference);
        }
        int revision = newest.map(DriverReferenceRow::revision).orElse(0) + 1;
        rows.save(new DriverReferenceRow(driverModelCode, reference, revision, StoredJson.cut(clock.instant())));
        return new PutAnswer<>(newest.isEmpty(), reference);
    }
}
