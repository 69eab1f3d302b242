package org.docksweep.kiosk.bench;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.docksweep.contract.ProofSweepBody.Subject;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.BareDriver;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverBenchData;
import org.docksweep.fleet.DriverKind;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.LevelMask;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.Reason;
import org.docksweep.gate.Baseline;
import org.docksweep.gate.PointReference;
import org.docksweep.kiosk.fleet.LocalFleet;
import org.docksweep.kiosk.rig.Lead;
import org.docksweep.kiosk.service.ServiceProblem;
import org.docksweep.kiosk.service.ServiceUnreachable;

/**
 * What a sweep of the bench proof is of: the whole cabinet, or the bare driver of one position on the bench rig. For the
 * gate a bare driver is a cabinet with one position and one test point, among all the other bare drivers of the house: one
 * that lies there by mistake is known by its curve. A value.
 *
 * @param driver driver model of a bare driver, or null for the whole cabinet
 * @param positionCode position a bare driver belongs to, or null for the whole cabinet
 * @param model what the gate judges
 * @param book models it may be mistaken for, and itself
 * @param references references of these
 * @param baselines own good curves that still hold
 */
record ProofSubject(
        DriverModel driver,
        String positionCode,
        CabinetModel model,
        ModelBook book,
        List<PointReference> references,
        List<Baseline> baselines) {

    /** The whole cabinet of a job; once parts were exchanged its own old curves are another driver's. */
    static ProofSubject cabinet(OpenJob job, LocalFleet fleet) {
        boolean repaired = !job.file().exchanges().isEmpty();
        return new ProofSubject(
                null,
                null,
                job.model(),
                fleet.snapshot().book(),
                fleet.references(),
                repaired ? List.of() : fleet.baselinesOf(job.file().job().tag()));
    }

    /** The bare driver of a position; empty when nobody has said how loud the bench rig may play to its model. */
    static Optional<ProofSubject> bareDriver(BenchOffice office, OpenJob job, String positionCode, LocalFleet fleet)
            throws ServiceProblem, ServiceUnreachable {
        ModelBook house = fleet.snapshot().book();
        DriverModel driver = house.driverModelAt(job.model(), positionCode);
        Map<String, LevelMask> masks = office.benchData().stream()
                .filter(d -> d.benchLevelMask() != null)
                .collect(Collectors.toMap(DriverBenchData::driverModelCode, DriverBenchData::benchLevelMask));
        if (!masks.containsKey(driver.code())) {
            return Optional.empty();
        }
        ModelBook book = BareDriver.book(house.driverModels(), masks);
        List<String> known =
                book.cabinetModels().stream().map(CabinetModel::code).toList();
        return Optional.of(new ProofSubject(
                driver,
                positionCode,
                book.cabinetModel(BareDriver.modelCode(driver.code())),
                book,
                office.driverReferences().stream()
                        .filter(r -> known.contains(r.cabinetModelCode()))
                        .toList(),
                List.of()));
    }

    boolean bare() {
        return positionCode != null;
    }

    Subject kind() {
        return bare() ? Subject.BARE_DRIVER : Subject.CABINET;
    }

    /** Whether every test point has a reference; without one nothing can pass. */
    boolean taught() {
        return model.testPoints().stream()
                .allMatch(point -> references.stream()
                        .anyMatch(r -> r.cabinetModelCode().equals(model.code())
                                && r.testPointCode().equals(point.code())));
    }

    /** What a person does before the sweep. */
    Reason prompt() {
        if (!bare()) {
            return Reason.of("bench-ask-proof");
        }
        String key = driver.kind() == DriverKind.CONE ? "bench-ask-bare-cone" : "bench-ask-bare-horn";
        return Reason.of(
                key, driver.name(), positionCode, model.testPoints().get(0).contacts());
    }

    /** Why the rig finds nothing. */
    Reason nothingConnected(AssetTag tag, String contacts) {
        return bare()
                ? Reason.of("bench-bare-open", driver.name(), positionCode)
                : Reason.of("dock-nothing-connected", tag.value(), contacts);
    }

    /** The lead, put where this is. */
    Lead lead(Lead lead) {
        return bare() ? new BareDriverLead(lead, positionCode) : lead;
    }

    /** A lead that goes to the driver on the bench, whatever test point is named. */
    private record BareDriverLead(Lead lead, String positionCode) implements Lead {
        @Override
        public boolean movesByItself() {
            return lead.movesByItself();
        }

        @Override
        public void plug(AssetTag label, String testPointCode) {
            lead.plugDriver(label, positionCode);
        }

        @Override
        public void plugDriver(AssetTag label, String position) {
            lead.plugDriver(label, position);
        }
    }
}
