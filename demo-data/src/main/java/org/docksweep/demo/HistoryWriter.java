package org.docksweep.demo;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.UUID;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.contract.InstalledDriver;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.DriverPosition;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.PartSource;
import org.docksweep.fleet.Reason;

/**
 * Invents some years of history per cabinet: registered when new, out and back a few times, now and then a diaphragm
 * replaced. Reason keys: {@code history-registered} (model), {@code history-installed} (driver serial),
 * {@code history-sent-out} (order, customer), {@code history-passed} (order), {@code history-repaired} (part, source).
 */
final class HistoryWriter {
    private static final double DAYS_PER_YEAR = 365.25;
    private static final int AFTERMARKET_IN = 4;

    private final long seed;
    private final ModelBook book;
    private final Random random;
    private final LocalDate night;
    private final String dockHand;
    private final String technician;
    private final String manager;
    private final List<HistoryEvent> events = new ArrayList<>();
    private int serial = 4100;

    HistoryWriter(
            long seed,
            ModelBook book,
            Random random,
            LocalDate night,
            String dockHand,
            String technician,
            String manager) {
        this.seed = seed;
        this.book = book;
        this.random = random;
        this.night = night;
        this.dockHand = dockHand;
        this.technician = technician;
        this.manager = manager;
    }

    CabinetBody cabinet(PhysicalUnit unit, String shelfPlace, CabinetStatus status) {
        LocalDate built = night.minusDays(Math.round(unit.ageYears() * DAYS_PER_YEAR));
        event(
                unit.tag(),
                null,
                built,
                9,
                manager,
                HistoryEvent.Kind.REGISTERED,
                "history-registered",
                unit.modelCode());
        hires(unit, built);
        List<InstalledDriver> drivers = new ArrayList<>();
        for (DriverPosition position : book.cabinetModel(unit.modelCode()).positions()) {
            drivers.add(installed(unit, position, built));
        }
        return new CabinetBody(unit.tag(), unit.modelCode(), shelfPlace, status, false, List.copyOf(drivers));
    }

    private void hires(PhysicalUnit unit, LocalDate built) {
        int hires = 1 + random.nextInt(4);
        long span = Math.max(40, night.toEpochDay() - built.toEpochDay() - 20);
        for (int i = 0; i < hires; i++) {
            LocalDate out = built.plusDays(10 + (long) ((i + random.nextDouble() * 0.8) * (span - 20) / hires));
            String order = String.format(Locale.ROOT, "MC-%05d", 5000 + random.nextInt(14_000));
            String customer = HouseNames.customer(random);
            event(unit.tag(), null, out, 8, dockHand, HistoryEvent.Kind.SENT_OUT, "history-sent-out", order, customer);
            event(
                    unit.tag(),
                    null,
                    out.plusDays(3),
                    2,
                    dockHand,
                    HistoryEvent.Kind.CHECKED_IN,
                    "history-passed",
                    order);
        }
    }

    private InstalledDriver installed(PhysicalUnit unit, DriverPosition position, LocalDate built) {
        DriverModel driver = book.driverModel(position.driverModelCode());
        String driverSerial = String.format(Locale.ROOT, "%s-%05d", driver.code(), serial++);
        String part = driver.diaphragmPartNumbers().get(0);
        event(
                unit.tag(),
                position.code(),
                built,
                10,
                manager,
                HistoryEvent.Kind.INSTALLED,
                "history-installed",
                driverSerial);
        boolean repaired = unit.ageYears() > 1.5 && random.nextInt(6) == 0;
        if (!repaired) {
            return new InstalledDriver(
                    position.code(), driver.code(), driverSerial, partSerial(part), PartSource.ORIGINAL, built);
        }
        long age = night.toEpochDay() - built.toEpochDay();
        LocalDate day = built.plusDays((long) (age * (0.3 + 0.6 * random.nextDouble())));
        boolean aftermarket = random.nextInt(AFTERMARKET_IN) == 0;
        PartSource source = aftermarket ? PartSource.AFTERMARKET : PartSource.ORIGINAL;
        event(
                unit.tag(),
                position.code(),
                day,
                14,
                technician,
                HistoryEvent.Kind.REPAIRED,
                "history-repaired",
                part,
                source.name().toLowerCase(Locale.ROOT));
        String partSerial = aftermarket ? null : partSerial(part);
        return new InstalledDriver(position.code(), driver.code(), driverSerial, partSerial, source, day);
    }

    private String partSerial(String part) {
        return String.format(Locale.ROOT, "%s-%06d", part, 100_000 + serial * 7 % 800_000);
    }

    void sentOut(PhysicalUnit unit, String order, String customer) {
        event(
                unit.tag(),
                null,
                night.minusDays(5),
                8,
                dockHand,
                HistoryEvent.Kind.SENT_OUT,
                "history-sent-out",
                order,
                customer);
    }

    private void event(
            AssetTag tag,
            String positionCode,
            LocalDate day,
            int hour,
            String by,
            HistoryEvent.Kind kind,
            String key,
            String... arguments) {
        Instant at = day.atTime(hour, events.size() % 60).toInstant(ZoneOffset.UTC);
        String name = MarramCoastHire.SITE_NAME + "/" + seed + "/event/" + events.size();
        UUID id = UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8));
        events.add(new HistoryEvent(id, tag, positionCode, at, by, kind, Reason.of(key, arguments)));
    }

    List<HistoryEvent> events() {
        return events.stream().sorted(Comparator.comparing(HistoryEvent::at)).toList();
    }
}
