package org.docksweep.service.trends;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
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
import org.docksweep.service.store.AddedRows;
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

    private static final int CABINETS_PER_QUERY = 500;
    private static final int ROWS_PER_DELETE = 500;

    private final AddedRows added;
    private final DriftWarnings warnings;
    private final Spreads spreads;
    private final Fleet fleet;

    Trends(AddedRows added, DriftWarnings warnings, Spreads spreads, Fleet fleet) {
        this.added = added;
        this.warnings = warnings;
        this.spreads = spreads;
        this.fleet = fleet;
    }

    /** Takes the readings out of a new check-in, in its transaction; where its cabinet is going is looked at later. */
    @EventListener
    @Transactional(propagation = Propagation.MANDATORY)
    public void stored(CheckInStored stored) {
        CheckInBody body = stored.body();
        List<Object[]> found = new ArrayList<>();
        for (MeasurementBody measurement : body.measurements()) {
            if (measurement.judgement().verdict() == Verdict.SWEEP_AGAIN) {
                continue;
            }
            List<Reading> all = measurement.judgement().readings();
            for (int i = 0; i < all.size(); i++) {
                if (follows(all.get(i))) {
                    found.add(TrendReading.values(body, measurement, i, all.get(i)));
                }
            }
        }
        if (!found.isEmpty()) {
            added.later(TrendReading.INSERT, found);
            added.later(
                    "insert into trend_due (check_in_id, tag) values (?, ?)",
                    List.<Object[]>of(new Object[] {body.id(), body.tag().value()}));
        }
    }

    /**
     * Replaces the warnings of cabinets that have new readings. Whoever locks all of a cabinet's rows first does it; a
     * row that comes meanwhile stays for the next look.
     *
     * @param most cabinets at most
     * @return how many cabinets were looked at
     */
    @Transactional(propagation = Propagation.MANDATORY)
    int lookAtDue(int most) {
        List<String> tags = added.read(
                "select distinct tag from trend_due order by tag fetch first " + most + " rows only",
                (row, number) -> row.getString(1));
        if (tags.isEmpty()) {
            return 0;
        }
        Object[] values = TakenReading.padded(tags);
        List<Object[]> taken = added.read(
                "select check_in_id, tag from trend_due where tag in (" + TakenReading.marks(values.length)
                        + ") order by check_in_id for update",
                (row, number) -> new Object[] {row.getObject(1), row.getString(2)},
                values);
        List<AssetTag> looked = taken.stream()
                .map(row -> new AssetTag((String) row[1]))
                .distinct()
                .toList();
        List<DriftRow> drifting = rows(looked);
        delete("drift_warning", "tag", looked.stream().map(AssetTag::value).toList());
        added.batch(
                DriftWarning.INSERT, drifting.stream().map(DriftWarning::values).toList());
        delete("trend_due", "check_in_id", taken.stream().map(row -> row[0]).toList());
        return tags.size();
    }

    private void delete(String table, String column, List<?> keys) {
        for (int from = 0; from < keys.size(); from += ROWS_PER_DELETE) {
            Object[] some = TakenReading.padded(keys.subList(from, Math.min(keys.size(), from + ROWS_PER_DELETE)));
            added.batch(
                    "delete from " + table + " where " + column + " in (" + TakenReading.marks(some.length) + ")",
                    List.<Object[]>of(some));
        }
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

    /** What drifts of some cabinets. */
    private List<DriftRow> rows(Collection<AssetTag> tags) {
        List<DriftRow> rows = new ArrayList<>();
        List<AssetTag> all = List.copyOf(tags);
        for (int from = 0; from < all.size(); from += CABINETS_PER_QUERY) {
            List<AssetTag> some = all.subList(from, Math.min(all.size(), from + CABINETS_PER_QUERY));
            Map<AssetTag, List<Fleet.LastWork>> work =
                    fleet.lastWork(some).stream().collect(Collectors.groupingBy(Fleet.LastWork::tag));
            TakenReading.of(added, some.stream().map(AssetTag::value).toList()).stream()
                    .collect(Collectors.groupingBy(TakenReading::tag, LinkedHashMap::new, Collectors.toList()))
                    .forEach((value, own) -> {
                        AssetTag tag = new AssetTag(value);
                        rows(tag, work.getOrDefault(tag, List.of()), own).stream()
                                .filter(Trends::drifts)
                                .forEach(rows::add);
                    });
        }
        return rows;
    }

    private List<DriftRow> rows(AssetTag tag) {
        List<Fleet.LastWork> work = fleet.lastWork(List.of(tag));
        return rows(tag, work, TakenReading.of(added, List.of(tag.value())));
    }

    private List<DriftRow> rows(AssetTag tag, List<Fleet.LastWork> work, List<TakenReading> oldestFirst) {
        Map<Quantity, List<DriftRow.Point>> series = new LinkedHashMap<>();
        for (TakenReading reading : oldestFirst) {
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
        Set<AssetTag> due = new TreeSet<>(
                added.read("select distinct tag from trend_due", (row, number) -> new AssetTag(row.getString(1))));
        List<DriftRow> warned = new ArrayList<>(rows(due));
        warnings.findAllByOrderByTag().stream()
                .map(DriftWarning::row)
                .filter(row -> !due.contains(row.tag()))
                .forEach(warned::add);
        List<AssetTag> tags = warned.stream().map(DriftRow::tag).distinct().toList();
        Map<AssetTag, Fleet.Known> known = fleet.known(tags);
        Map<AssetTag, List<Fleet.LastWork>> work =
                fleet.lastWork(tags).stream().collect(Collectors.groupingBy(Fleet.LastWork::tag));
        List<DriftRow> rows = new ArrayList<>();
        for (DriftRow row : warned) {
            Instant lastAt = row.points().get(row.points().size() - 1).at();
            String owner = row.positionCode() == null ? "" : row.positionCode();
            boolean repairedSince =
                    !since(work.getOrDefault(row.tag(), List.of()), owner).isBefore(lastAt);
            CabinetStatus status = known.get(row.tag()).status();
            if (!repairedSince && IN_HIRE.contains(status)) {
                rows.add(withStatus(row, status));
            }
        }
        rows.sort(Comparator.comparingDouble(DriftRow::concerns).reversed().thenComparing(DriftRow::tag));
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
