package org.docksweep.kiosk.dock;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.ReturnList;
import org.docksweep.contract.ReturnReport;
import org.docksweep.contract.ReturnReport.Row;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.Route;
import org.docksweep.kiosk.dock.DockState.ModelTally;
import org.docksweep.kiosk.dock.DockState.Slot;
import org.docksweep.kiosk.dock.DockState.SlotState;
import org.docksweep.kiosk.fleet.LocalFleet;

/** Results so far, by list and cabinet. A cabinet checked in again takes the place of its earlier result. */
final class ReturnsBook {

    /**
     * A result.
     *
     * @param row the result in one line
     * @param checkIn the check-in in this kiosk's spool, when it was made here; its curves would fill the memory of a long night
     */
    record Entry(Row row, Optional<UUID> checkIn) {}

    private record Key(UUID returnListId, AssetTag tag) {}

    private final Map<Key, Entry> entries = new LinkedHashMap<>();

    void add(CheckInBody body) {
        Row row = new Row(
                body.tag(),
                body.modelCode(),
                body.finishedAt(),
                body.verdict(),
                body.route(),
                body.watch(),
                body.reason(),
                body.jobCode());
        entries.put(new Key(body.returnListId(), body.tag()), new Entry(row, Optional.of(body.id())));
    }

    /**
     * A result of here that a newer one of another kiosk took the place of.
     *
     * @param here what this kiosk had
     * @param there what the other one found later
     */
    record Overtaken(Row here, Row there) {}

    /**
     * Takes over what other kiosks checked in. What was checked in here stays as it is, unless the other result is newer.
     *
     * @return results of here that a newer one took the place of
     */
    List<Overtaken> takeOver(LocalFleet fleet, UUID listAtHand) {
        List<Overtaken> overtaken = new ArrayList<>();
        for (Row row : fleet.snapshot().checkedIn()) {
            UUID list = fleet.openListOf(row.tag()).map(ReturnList::id).orElse(listAtHand);
            Key key = new Key(list, row.tag());
            Entry known = entries.get(key);
            if (known == null) {
                entries.put(key, new Entry(row, Optional.empty()));
            } else if (row.checkedInAt().isAfter(known.row().checkedInAt())) {
                entries.put(key, new Entry(row, Optional.empty()));
                if (known.checkIn().isPresent()) {
                    overtaken.add(new Overtaken(known.row(), row));
                }
            }
        }
        return overtaken;
    }

    Optional<Entry> find(UUID returnListId, AssetTag tag) {
        return Optional.ofNullable(entries.get(new Key(returnListId, tag)));
    }

    /**
     * How many cabinets of the model of a check-in went to the bench before it since a copy of the fleet was made; empty
     * when the copy is newer than the check-in and may know of it already.
     */
    Optional<Integer> toBenchBefore(CheckInBody body, Instant copyMadeAt) {
        if (body.finishedAt().isBefore(copyMadeAt)) {
            return Optional.empty();
        }
        return Optional.of((int) entries.values().stream()
                .map(Entry::row)
                .filter(row -> row.route() == Route.BENCH
                        && row.modelCode().equals(body.modelCode())
                        && !row.tag().equals(body.tag())
                        && !row.checkedInAt().isBefore(copyMadeAt)
                        && row.checkedInAt().isBefore(body.finishedAt()))
                .count());
    }

    ReturnReport report(ReturnList list, Instant asOf) {
        List<Row> back = new ArrayList<>();
        List<ReturnList.Line> missing = new ArrayList<>();
        for (ReturnList.Line line : list.lines()) {
            find(list.id(), line.tag()).ifPresentOrElse(e -> back.add(e.row()), () -> missing.add(line));
        }
        return new ReturnReport(list, asOf, back, missing, unexpected(list));
    }

    private List<Row> unexpected(ReturnList list) {
        return entries.entrySet().stream()
                .filter(e -> list.id().equals(e.getKey().returnListId()))
                .map(e -> e.getValue().row())
                .filter(row ->
                        list.lines().stream().noneMatch(line -> line.tag().equals(row.tag())))
                .sorted(Comparator.comparing(Row::checkedInAt))
                .toList();
    }

    DockState.Returns picture(ReturnList list, ModelBook book, AssetTag atHand) {
        Map<String, List<Slot>> byModel = new LinkedHashMap<>();
        int back = 0;
        int failed = 0;
        for (ReturnList.Line line : list.lines()) {
            Optional<Entry> entry = find(list.id(), line.tag());
            SlotState state = line.tag().equals(atHand)
                    ? SlotState.AT_HAND
                    : entry.map(e -> slotState(e.row())).orElse(SlotState.NOT_YET);
            byModel.computeIfAbsent(line.modelCode(), m -> new ArrayList<>()).add(new Slot(line.tag(), state));
            back += entry.isPresent() ? 1 : 0;
            failed += entry.filter(e -> e.row().route() != Route.SHELF).isPresent() ? 1 : 0;
        }
        List<ModelTally> tallies = byModel.entrySet().stream()
                .map(e -> new ModelTally(book.cabinetModel(e.getKey()), List.copyOf(e.getValue())))
                .toList();
        List<Slot> unexpected = unexpected(list).stream()
                .map(row -> new Slot(row.tag(), row.tag().equals(atHand) ? SlotState.AT_HAND : slotState(row)))
                .toList();
        return new DockState.Returns(
                list.orderNumber(), list.customer(), list.lines().size(), back, failed, tallies, unexpected);
    }

    private static SlotState slotState(Row row) {
        return switch (row.route()) {
            case SHELF -> row.watch() ? SlotState.WATCH : SlotState.SHELF;
            case BENCH -> SlotState.BENCH;
            case SAFETY_HOLD, MANUAL_HOLD -> SlotState.HOLD;
        };
    }
}
