package org.docksweep.service.trends;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.DriftRow;
import org.docksweep.contract.MeasurementBody;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.Reading;
import org.docksweep.gate.ReadingState;
import org.docksweep.service.cabinets.Fleet;
import org.docksweep.service.checkins.CheckInStored;
import org.docksweep.service.web.Refusal;
import org.docksweep.survival.Trend;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/**
 * Follows the readings of every cabinet. A repair begins a new story: readings before the last exchange or sign-off say
 * nothing about the driver that is in now.
 */
@Service
@Transactional(readOnly = true)
public class Trends {
    /** Cabinets that can go out to a show as they are. */
    private static final Set<CabinetStatus> IN_HIRE = Set.of(CabinetStatus.READY, CabinetStatus.OUT);

    private final TrendReadings readings;
    private final DriftWarnings warnings;
    private final Spreads spreads;
    private final Fleet fleet;

    Trends(TrendReadings readings, DriftWarnings warnings, Spreads spreads, Fleet fleet) {
        this.readings = readings;
        this.warnings = warnings;
        this.spreads = spreads;
        this.fleet = fleet;
    }

    /** Takes the readings out of a new check-in and looks where its cabinet is going; in the check-in's transaction. */
    @EventListener
    @Transactional(propagation = Propagation.MANDATORY)
    public void stored(CheckInStored stored) {
        CheckInBody body = stored.body();
        for (MeasurementBody measurement : body.measurements()) {
            if (measurement.judgement().verdict() == Verdict.SWEEP_AGAIN) {
                continue;
            }
            List<Reading> all = measurement.judgement().readings();
            for (int i = 0; i < all.size(); i++) {
                if (follows(all.get(i))) {
                    readings.save(new TrendReading(body, measurement, i, all.get(i)));
                }
            }
        }
        readings.flush();
        warnings.deleteAll(warnings.findByTag(body.tag().value()));
        warnings.flush();
        rows(body.tag()).stream().filter(Trends::drifts).forEach(r -> warnings.save(new DriftWarning(r)));
    }

    /** A reading at fault is the gate's matter; one that is no number on its scale says nothing. */
    private static boolean follows(Reading reading) {
        Quantity.Followed followed = Quantity.followed(reading.kind());
        return followed != null
                && reading.state() != ReadingState.FAULT
                && Double.isFinite(reading.value())
                && (!followed.asRatio() || reading.value() > 0);
    }

    private static boolean drifts(DriftRow row) {
        return row.state() == Trend.State.FALLING || row.state() == Trend.State.RISING;
    }

    /** All followed quantities of a cabinet since its last repair. */
    List<DriftRow> of(AssetTag tag) {
        Fleet.Known known = fleet.known(List.of(tag)).get(tag);
        if (known == null) {
            throw Refusal.notFound("tag", "there is no cabinet " + tag, "Check the label.");
        }
        return rows(tag).stream().map(r -> withStatus(r, known.status())).toList();
    }

    private List<DriftRow> rows(AssetTag tag) {
        List<Fleet.LastWork> work = fleet.lastWork(List.of(tag));
        Map<Quantity, List<DriftRow.Point>> series = new LinkedHashMap<>();
        for (TrendReading reading : readings.of(tag.value(), since(work, null))) {
            Quantity quantity = reading.quantity();
            if (reading.point().at().isAfter(since(work, quantity.owner()))) {
                series.computeIfAbsent(quantity, q -> new ArrayList<>()).add(reading.point());
            }
        }
        List<DriftRow> rows = new ArrayList<>();
        series.forEach((quantity, points) -> rows.add(TrendWords.row(tag, quantity, points, spreads.of(quantity))));
        return rows;
    }

    /**
     * When a new story began for a driver, for a whole test point (owner empty) with any driver of the cabinet, or for
     * the whole cabinet (null).
     */
    private static Instant since(List<Fleet.LastWork> work, String owner) {
        return work.stream()
                .filter(w -> w.positionCode() == null
                        || owner != null && (owner.isEmpty() || w.positionCode().equals(owner)))
                .map(Fleet.LastWork::at)
                .max(Comparator.naturalOrder())
                .orElse(Instant.EPOCH);
    }

    /**
     * Cabinets on the shelf or out with customers that are on their way to a fault.
     *
     * @return rows, most pressing first
     */
    public List<DriftRow> watchList() {
        List<DriftWarning> stored = warnings.findAllByOrderByTag();
        List<AssetTag> tags = stored.stream().map(w -> w.row().tag()).distinct().toList();
        Map<AssetTag, Fleet.Known> known = fleet.known(tags);
        Map<AssetTag, List<Fleet.LastWork>> work =
                fleet.lastWork(tags).stream().collect(Collectors.groupingBy(Fleet.LastWork::tag));
        List<DriftRow> rows = new ArrayList<>();
        for (DriftWarning warning : stored) {
            DriftRow row = warning.row();
            String owner = row.positionCode() == null ? "" : row.positionCode();
            boolean repairedSince =
                    !since(work.getOrDefault(row.tag(), List.of()), owner).isBefore(warning.lastAt());
            CabinetStatus status = known.get(row.tag()).status();
            if (!repairedSince && IN_HIRE.contains(status)) {
                rows.add(withStatus(row, status));
            }
        }
        rows.sort(Comparator.comparingDouble(DriftRow::concerns).reversed());
        return rows;
    }

    private static DriftRow withStatus(DriftRow row, CabinetStatus status) {
        return new DriftRow(
                row.tag(),
                row.modelCode(),
                status,
                row.testPointCode(),
                row.positionCode(),
                row.kind(),
                row.state(),
                row.returns(),
                row.change(),
                row.concerns(),
                row.start(),
                row.lowerLimit(),
                row.upperLimit(),
                row.points(),
                row.words());
    }
}
