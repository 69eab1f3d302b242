package org.docksweep.paper;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.docksweep.contract.BenchJobBody;
import org.docksweep.contract.DriftRow;
import org.docksweep.contract.FleetStatus;
import org.docksweep.contract.ReturnList;
import org.docksweep.contract.ReturnReport;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Route;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.ReadingKind;
import org.docksweep.survival.Trend;

/** Builds reports of an invented night of any size. */
final class SampleSheets {
    private static final Instant NIGHT = Instant.parse("2025-10-18T00:30:00Z");
    private static final LocalDate TODAY = LocalDate.of(2025, 10, 18);
    private static final String[] MODELS = {"TIDE-12", "BREAKER-215", "SKIFF-P"};

    private SampleSheets() {}

    /** A return of {@code back} cabinets with every kind of outcome among them, two missing, one unexpected. */
    static ReturnReport returned(int back) {
        List<ReturnReport.Row> rows = new ArrayList<>();
        List<ReturnList.Line> lines = new ArrayList<>();
        for (int i = 0; i < back; i++) {
            rows.add(row(i));
            lines.add(new ReturnList.Line(tag(i), MODELS[i % MODELS.length]));
        }
        List<ReturnList.Line> missing =
                List.of(new ReturnList.Line(tag(9001), "TIDE-12"), new ReturnList.Line(tag(9002), "BREAKER-215"));
        lines.addAll(missing);
        ReturnList list =
                new ReturnList(new UUID(1, 1), "R-2025-0417", "Saltmarsh Players", TODAY.minusDays(1), false, lines);
        return new ReturnReport(list, NIGHT.plusSeconds(9000), rows, missing, List.of(row(7007)));
    }

    static ReturnReport nothingReturned() {
        ReturnList list = new ReturnList(new UUID(1, 2), "R-2025-0418", "Saltmarsh Players", TODAY, true, List.of());
        return new ReturnReport(list, NIGHT, List.of(), List.of(), List.of());
    }

    private static ReturnReport.Row row(int i) {
        Instant at = NIGHT.plusSeconds(75L * i);
        String model = MODELS[i % MODELS.length];
        return switch (i % 12) {
            case 3 ->
                new ReturnReport.Row(
                        tag(i),
                        model,
                        at,
                        Verdict.FAIL,
                        Route.BENCH,
                        false,
                        SampleTag.words("HF open: no current between 1.9 and 8 kHz."),
                        JobCode.of(1, i + 1));
            case 5 ->
                new ReturnReport.Row(
                        tag(i),
                        model,
                        at,
                        Verdict.PASS,
                        Route.SHELF,
                        true,
                        SampleTag.words("Passes; box tuning is at 85 % of its limit."),
                        null);
            case 7 ->
                new ReturnReport.Row(
                        tag(i),
                        model,
                        at,
                        null,
                        Route.SAFETY_HOLD,
                        false,
                        SampleTag.words("Rigging is damaged: held until a qualified person releases it."),
                        null);
            case 9 ->
                new ReturnReport.Row(
                        tag(i),
                        model,
                        at,
                        Verdict.SWEEP_AGAIN,
                        Route.MANUAL_HOLD,
                        false,
                        SampleTag.words("Three sweeps were spoiled by noise: a person decides."),
                        null);
            default ->
                new ReturnReport.Row(
                        tag(i),
                        model,
                        at,
                        Verdict.PASS,
                        Route.SHELF,
                        false,
                        SampleTag.words("Everything within limits."),
                        null);
        };
    }

    static FleetStatus fleet(int jobs, int bookings) {
        List<FleetStatus.ModelRow> models = List.of(
                new FleetStatus.ModelRow("TIDE-12", "two-way 12-inch cabinet", 22, 14, 3, 0, 1, 1),
                new FleetStatus.ModelRow("BREAKER-215", "double 15-inch sub", 9, 12, 2, 1, 0, 0),
                new FleetStatus.ModelRow("SKIFF-P", "powered two-way cabinet", 1104, 6, 0, 0, 2, 0));
        List<FleetStatus.BookingRow> booked = new ArrayList<>();
        for (int i = 0; i < bookings; i++) {
            booked.add(new FleetStatus.BookingRow(
                    TODAY.plusDays(1 + i / 3),
                    "B-2025-" + (1100 + i),
                    i % 2 == 0 ? "Harbour Fair" : "Saltmarsh Players and Friends of the Old Quay Theatre",
                    MODELS[i % MODELS.length],
                    8,
                    i % 5 == 4 ? 5 : 8));
        }
        List<BenchJobBody> queue = new ArrayList<>();
        for (int i = 0; i < jobs; i++) {
            queue.add(new BenchJobBody(
                    JobCode.of(1, 100 + i),
                    tag(i),
                    MODELS[i % MODELS.length],
                    BenchJobBody.State.values()[i % 5],
                    NIGHT.minusSeconds(86_400L * (i % 17)),
                    i % 4 == 0 ? null : TODAY.plusDays(2 + (i * 7) % 11),
                    i % 6 == 0 ? null : "HF",
                    SampleTag.words("HF open: no current between 1.9 and 8 kHz."),
                    SampleEvidence.suspects(2),
                    List.of(),
                    3,
                    i % 5 == 0 ? null : "bench-1",
                    i % 5 == 0 ? null : "Ines Duna",
                    null,
                    45));
        }
        List<FleetStatus.FaultRow> faults = List.of(
                new FleetStatus.FaultRow("DUNE-12", 212, 3),
                new FleetStatus.FaultRow("SPRAY-1", 118, 9),
                new FleetStatus.FaultRow("SPRAY-2", 0, 0));
        return new FleetStatus(
                "Marram Coast Hire", NIGHT.plusSeconds(9000), models, booked, queue, faults, List.of(drifting()));
    }

    static AssetTag tag(int number) {
        return new AssetTag(String.format(java.util.Locale.ROOT, "MCH-%06d", number));
    }

    private static DriftRow drifting() {
        return new DriftRow(
                new AssetTag("MCH-000031"),
                MODELS[0],
                CabinetStatus.READY,
                "HF",
                "HF2",
                ReadingKind.WAY_LEVEL,
                Trend.State.FALLING,
                3,
                -2,
                1.3,
                0,
                -0.9,
                0.9,
                List.of(),
                Reason.of("trend-level-falling", "HF2", "MCH-000031", "2.0 dB", "3"));
    }
}
