package org.docksweep.service.cabinets;

import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.contract.InstalledDriver;
import org.docksweep.contract.Timeline;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.JobCode;
import org.docksweep.service.web.Refusal;
import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** What sits in which position, from its fitting to its removal. Writes join the caller's transaction. */
@Service
@Transactional(propagation = Propagation.MANDATORY)
public class Fittings {
    private final Installations installations;
    private final Cabinets cabinets;
    private final Events events;

    Fittings(Installations installations, Cabinets cabinets, Events events) {
        this.installations = installations;
        this.cabinets = cabinets;
        this.events = events;
    }

    /**
     * A cabinet with its drivers.
     *
     * @param tag cabinet
     * @return the cabinet
     * @throws Refusal if there is none
     */
    public CabinetBody cabinet(AssetTag tag) {
        Cabinet cabinet = cabinets.findById(tag.value()).orElseThrow(() -> Fleet.unknown(tag));
        return Fleet.body(cabinet, Fleet.byTag(installations.openIn(tag.value())));
    }

    /**
     * The driver in a position.
     *
     * @param tag cabinet
     * @param positionCode position
     * @return what sits there; empty when nothing does
     */
    public Optional<InstalledDriver> at(AssetTag tag, String positionCode) {
        return installations.openAt(tag.value(), positionCode).map(Installation::driver);
    }

    /**
     * Takes a driver, or its moving part, out of its position.
     *
     * @param tag cabinet
     * @param positionCode position that is not empty
     * @param at when
     * @param job job that does it
     * @return what was there
     */
    public Timeline.Stay takeOut(AssetTag tag, String positionCode, Instant at, JobCode job) {
        Installation open = installations
                .openAt(tag.value(), positionCode)
                .orElseThrow(() -> new IllegalStateException("nothing sits in " + tag + " at " + positionCode));
        open.remove(at, job);
        installations.flush();
        return open.stay();
    }

    /**
     * Puts a driver into an empty position.
     *
     * @param tag cabinet
     * @param driver driver with its moving part
     * @param partNumber part number of the moving part, or null when not known
     * @param job job that does it
     */
    public void putIn(AssetTag tag, InstalledDriver driver, String partNumber, JobCode job) {
        installations.saveAndFlush(new Installation(tag, driver, partNumber, job));
    }

    /**
     * Where a driver unit sits now.
     *
     * @param driverModelCode driver model
     * @param serial its serial
     * @return its stay; empty when it sits in no cabinet
     */
    public Optional<Timeline.Stay> placeOf(String driverModelCode, String serial) {
        return installations.openOf(driverModelCode, serial).map(Installation::stay);
    }

    /**
     * Where a diaphragm or recone kit sits or sat.
     *
     * @param driverModelCodes driver models it may sit in
     * @param serial its serial
     * @return its stays, oldest first
     */
    public List<Timeline.Stay> staysOfDiaphragm(Collection<String> driverModelCodes, String serial) {
        return installations.withDiaphragm(driverModelCodes, serial).stream()
                .map(Installation::stay)
                .toList();
    }

    /**
     * All stays in a cabinet.
     *
     * @param tag cabinet
     * @return its stays, newest first
     */
    public List<Timeline.Stay> staysIn(AssetTag tag) {
        return installations.ofCabinet(tag.value()).stream()
                .map(Installation::stay)
                .toList();
    }

    /**
     * All stays of a driver unit.
     *
     * @param driverModelCode driver model
     * @param serial its serial
     * @return its stays, newest first
     */
    public List<Timeline.Stay> staysOfDriver(String driverModelCode, String serial) {
        return installations.ofDriver(driverModelCode, serial).stream()
                .map(Installation::stay)
                .toList();
    }

    /**
     * All stays of the drivers of a model.
     *
     * @param driverModelCode driver model, or null for all models
     * @return by id of the stay, oldest first
     */
    public Map<UUID, Timeline.Stay> staysOfModel(String driverModelCode) {
        return (driverModelCode == null ? installations.all() : installations.ofModel(driverModelCode))
                .stream()
                        .collect(Collectors.toMap(
                                Installation::getId, Installation::stay, (a, b) -> a, java.util.LinkedHashMap::new));
    }

    /**
     * Events of a cabinet.
     *
     * @param tag cabinet
     * @param most most events wanted
     * @return newest first
     */
    public List<HistoryEvent> events(AssetTag tag, int most) {
        return events.newest(tag.value(), Limit.of(most)).stream()
                .map(EventRow::event)
                .toList();
    }
}
