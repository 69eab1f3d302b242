package org.docksweep.demo;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.docksweep.contract.DemoHouse;
import org.docksweep.contract.StockMoveBody;
import org.docksweep.fleet.Part;

/** The bench of the demo house: numbers of its drivers, its catalogue and what lies on the shelf. All invented. */
final class DemoBench {
    private static final int DAYS_BEFORE = 9;

    private DemoBench() {}

    /**
     * A part and how many of it there are.
     *
     * @param part part
     * @param inStock pieces on the shelf
     */
    record Shelf(Part part, int inStock) {}

    /** The bench as it stands in the night; only dates and ids follow night and seed. */
    static DemoHouse.Bench of(long seed, LocalDate night, String technician) {
        List<Shelf> shelves = DemoModels.shelves();
        List<StockMoveBody> stock = new ArrayList<>();
        Instant at = night.minusDays(DAYS_BEFORE).atTime(11, 0).toInstant(ZoneOffset.UTC);
        for (Shelf shelf : shelves) {
            if (shelf.inStock() > 0) {
                String name = MarramCoastHire.SITE_NAME + "/" + seed + "/stock/"
                        + shelf.part().number();
                stock.add(new StockMoveBody(
                        UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8)),
                        shelf.part().number(),
                        at,
                        technician,
                        StockMoveBody.Kind.RECEIVED,
                        shelf.inStock(),
                        serials(shelf),
                        null));
            }
        }
        return new DemoHouse.Bench(
                technician,
                DemoModels.benchData(),
                shelves.stream().map(Shelf::part).toList(),
                List.copyOf(stock));
    }

    private static List<String> serials(Shelf shelf) {
        List<String> serials = new ArrayList<>();
        for (int i = 1; shelf.part().serialised() && i <= shelf.inStock(); i++) {
            serials.add(String.format(Locale.ROOT, "%s-%06d", shelf.part().number(), 900_000 + i));
        }
        return serials;
    }
}
