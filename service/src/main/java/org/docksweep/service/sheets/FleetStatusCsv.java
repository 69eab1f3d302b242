package org.docksweep.service.sheets;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Objects;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.docksweep.contract.BenchJobBody;
import org.docksweep.contract.DriftRow;
import org.docksweep.contract.FleetStatus;
import org.docksweep.paper.FleetStatusSheet;

/** One table of the fleet status as CSV (RFC 4180); numbers never follow a locale, cells are never read as formulas. */
final class FleetStatusCsv {
    private FleetStatusCsv() {}

    static String of(FleetStatus status, FleetStatusSheet.Table part) {
        StringWriter text = new StringWriter();
        try (CSVPrinter csv = new CSVPrinter(text, CSVFormat.RFC4180)) {
            switch (part) {
                case MODELS -> models(csv, status);
                case BOOKINGS -> bookings(csv, status);
                case BENCH -> bench(csv, status);
                case FAULTS -> faults(csv, status);
                case DRIFTING -> drifting(csv, status);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    private static void models(CSVPrinter csv, FleetStatus status) throws IOException {
        csv.printRecord("model", "name", "ready", "out", "bench", "safety_hold", "manual_hold", "missing");
        for (FleetStatus.ModelRow r : status.models()) {
            print(
                    csv,
                    r.modelCode(),
                    r.modelName(),
                    r.ready(),
                    r.out(),
                    r.bench(),
                    r.safetyHold(),
                    r.manualHold(),
                    r.missing());
        }
    }

    private static void bookings(CSVPrinter csv, FleetStatus status) throws IOException {
        csv.printRecord("out_on", "order_number", "customer", "model", "booked", "available");
        for (FleetStatus.BookingRow r : status.bookings()) {
            print(csv, r.outOn(), r.orderNumber(), r.customer(), r.modelCode(), r.booked(), r.available());
        }
    }

    private static void bench(CSVPrinter csv, FleetStatus status) throws IOException {
        csv.printRecord("code", "tag", "model", "state", "opened_at", "need_on", "effort_minutes");
        for (BenchJobBody r : status.benchQueue()) {
            print(
                    csv,
                    r.code(),
                    r.tag(),
                    r.modelCode(),
                    r.state(),
                    r.openedAt(),
                    r.needOn(),
                    r.expectedEffortMinutes());
        }
    }

    private static void faults(CSVPrinter csv, FleetStatus status) throws IOException {
        csv.printRecord("driver_model", "check_ins", "failures");
        for (FleetStatus.FaultRow r : status.faults()) {
            print(csv, r.driverModelCode(), r.checkIns(), r.failures());
        }
    }

    private static void drifting(CSVPrinter csv, FleetStatus status) throws IOException {
        csv.printRecord("tag", "model", "status", "test_point", "position", "quantity", "state", "returns", "change");
        for (DriftRow r : status.drifting()) {
            print(
                    csv,
                    r.tag(),
                    r.modelCode(),
                    r.status(),
                    r.testPointCode(),
                    r.positionCode(),
                    r.kind(),
                    r.state(),
                    r.returns(),
                    r.change());
        }
    }

    static void print(CSVPrinter csv, Object... cells) throws IOException {
        for (Object cell : cells) {
            csv.print(cell instanceof Number ? cell : harmless(Objects.toString(cell, "")));
        }
        csv.println();
    }

    private static String harmless(String cell) {
        return !cell.isEmpty() && "=+-@\t\r".indexOf(cell.charAt(0)) >= 0 ? "'" + cell : cell;
    }
}
