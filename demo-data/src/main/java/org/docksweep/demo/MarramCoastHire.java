package org.docksweep.demo;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.DemoHouse;
import org.docksweep.contract.Dispatch;
import org.docksweep.contract.ReturnList;
import org.docksweep.demo.physics.Climate;
import org.docksweep.demo.physics.Fault;
import org.docksweep.demo.physics.VirtualCabinet;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.ModelBook;

/**
 * Marram Coast Hire, the invented house: 120 cabinets of six models, six reference units of each, one truckload. Units,
 * faults, temperatures and papers follow from the seed alone; dates count from the night asked for.
 */
public final class MarramCoastHire {
    /** Name of the house. */
    public static final String SITE_NAME = "Marram Coast Hire";

    static final String TIME_ZONE = "Europe/Copenhagen";
    private static final int REFERENCE_UNITS_PER_MODEL = 6;
    private static final int FIRST_TAG = 101;
    private static final Map<String, Integer> FLEET = fleet();

    private final long seed;
    private final ModelBook book = DemoModels.book();
    private final double ambientCelsius;
    private final Map<AssetTag, PhysicalUnit> units = new LinkedHashMap<>();
    private final List<AssetTag> referenceUnits = new ArrayList<>();
    private final List<PhysicalUnit> listed = new ArrayList<>();
    private final Map<AssetTag, TruckItem> onTruck = new LinkedHashMap<>();
    private final DemoHouse papers;

    private MarramCoastHire(long seed, LocalDate night) {
        this.seed = seed;
        Random random = new Random(seed * 0x2545F4914F6CDD1DL + 11);
        this.ambientCelsius = Math.rint((6 + 28 * random.nextDouble()) * 2) / 2;
        Map<String, List<PhysicalUnit>> byModel = build(random);
        PhysicalUnit stranger = null;
        PhysicalUnit impostor = null;
        for (Map.Entry<String, List<PhysicalUnit>> model : byModel.entrySet()) {
            List<PhysicalUnit> drawn = new ArrayList<>(model.getValue());
            Collections.shuffle(drawn, random);
            for (PhysicalUnit unit : drawn.subList(0, REFERENCE_UNITS_PER_MODEL)) {
                referenceUnits.add(unit.tag());
            }
            int out = Truckload.ON_THE_LIST.get(model.getKey());
            listed.addAll(drawn.subList(REFERENCE_UNITS_PER_MODEL, REFERENCE_UNITS_PER_MODEL + out));
            PhysicalUnit spare = drawn.get(REFERENCE_UNITS_PER_MODEL + out);
            if (model.getKey().equals("DUNE15B")) {
                stranger = spare;
            } else if (model.getKey().equals("PEBL8")) {
                impostor = spare;
            }
        }
        Truckload.Loaded load = Truckload.load(random, ambientCelsius, listed, stranger, impostor);
        load.items().forEach(item -> onTruck.put(item.label(), item));
        this.papers = papers(random, night, stranger);
    }

    private static Map<String, Integer> fleet() {
        Map<String, Integer> counts = new LinkedHashMap<>();
        counts.put("SPIN12", 36);
        counts.put("DUNE15B", 22);
        counts.put("UNDR215", 16);
        counts.put("PEBL8", 20);
        counts.put("HEAD3", 14);
        counts.put("SALT12A", 12);
        return Collections.unmodifiableMap(counts);
    }

    /**
     * The house of a seed.
     *
     * @param seed seed
     * @param night date of the truckload; only dates follow it
     * @return the house
     */
    public static MarramCoastHire of(long seed, LocalDate night) {
        return new MarramCoastHire(seed, night);
    }

    private Map<String, List<PhysicalUnit>> build(Random random) {
        Map<String, List<PhysicalUnit>> byModel = new LinkedHashMap<>();
        int number = FIRST_TAG;
        for (Map.Entry<String, Integer> model : FLEET.entrySet()) {
            List<PhysicalUnit> built = new ArrayList<>();
            for (int i = 0; i < model.getValue(); i++) {
                AssetTag tag = new AssetTag(String.format(Locale.ROOT, "MCH-%06d", number++));
                PhysicalUnit unit = new PhysicalUnit(
                        tag, model.getKey(), random.nextLong(), 0.5 + Math.rint(70 * random.nextDouble()) / 10);
                units.put(tag, unit);
                built.add(unit);
            }
            byModel.put(model.getKey(), built);
        }
        return byModel;
    }

    /**
     * The papers of the house, as the service and the kiosk know them, with the truth beside.
     *
     * @return the papers
     */
    public DemoHouse papers() {
        return papers;
    }

    /**
     * Air temperature at the dock that night, 6 to 34 C.
     *
     * @return degrees Celsius
     */
    public double ambientCelsius() {
        return ambientCelsius;
    }

    /**
     * The cabinet that carries a label before the hire: healthy, near 20 C.
     *
     * @param label label
     * @return the cabinet, or null when the house owns none
     */
    public VirtualCabinet beforeHire(AssetTag label) {
        PhysicalUnit unit = units.get(label);
        if (unit == null) {
            return null;
        }
        double celsius = 20 + 2 * new Random(unit.unitSeed() ^ seed).nextDouble() - 1;
        return unit.healthy(book).at(Climate.even(celsius));
    }

    /**
     * The cabinet that carries a label when the truck has come: with what happened to it. Cabinets that were not out
     * stand in the hall, healthy, at its temperature.
     *
     * @param label label
     * @return the cabinet, or null when the house owns none
     */
    public VirtualCabinet atReturn(AssetTag label) {
        TruckItem item = onTruck.get(label);
        if (item == null) {
            PhysicalUnit unit = units.get(label);
            return unit == null ? null : unit.healthy(book).at(Climate.even(ambientCelsius));
        }
        VirtualCabinet cabinet = item.unit().healthy(book).at(item.climate());
        for (Fault fault : item.faults()) {
            cabinet = cabinet.with(fault);
        }
        return cabinet;
    }

    /**
     * Whether the first plug-in of this cabinet at the return does not make contact.
     *
     * @param label label
     * @return true if so
     */
    public boolean firstPlugFails(AssetTag label) {
        TruckItem item = onTruck.get(label);
        return item != null && item.truth().kind() == DemoHouse.Kind.NOT_PLUGGED;
    }

    /**
     * What the house's records say a label is.
     *
     * @param label label
     * @return model code, or null when the house owns no such cabinet
     */
    public String registeredModel(AssetTag label) {
        PhysicalUnit unit = units.get(label);
        return unit == null ? null : unit.modelCode();
    }

    private DemoHouse papers(Random random, LocalDate night, PhysicalUnit stranger) {
        String dockHand = HouseNames.person(random);
        String technician = HouseNames.person(random);
        String manager = HouseNames.person(random);
        String customer = HouseNames.customer(random);
        String order = String.format(Locale.ROOT, "MC-%05d", 20_000 + random.nextInt(9000));
        ReturnList list = new ReturnList(
                id("return-list"),
                order,
                customer,
                night,
                false,
                listed.stream()
                        .map(u -> new ReturnList.Line(u.tag(), u.modelCode()))
                        .toList());
        HistoryWriter histories = new HistoryWriter(seed, book, random, night, dockHand, technician, manager);
        Map<AssetTag, Boolean> out = new HashMap<>();
        listed.forEach(u -> out.put(u.tag(), true));
        out.put(stranger.tag(), true);
        List<CabinetBody> cabinets = new ArrayList<>();
        for (PhysicalUnit unit : units.values()) {
            boolean away = out.containsKey(unit.tag());
            cabinets.add(histories.cabinet(
                    unit, shelfPlace(cabinets.size()), away ? CabinetStatus.OUT : CabinetStatus.READY));
            if (away) {
                boolean expected = !unit.equals(stranger);
                histories.sentOut(unit, expected ? order : "MC-19977", expected ? customer : "Dune House Weddings");
            }
        }
        List<DemoHouse.Arrival> arrivals = onTruck.values().stream()
                .map(i -> new DemoHouse.Arrival(i.label(), i.visualDamage(), i.truth()))
                .toList();
        return new DemoHouse(
                SITE_NAME,
                TIME_ZONE,
                ambientCelsius,
                book,
                List.copyOf(cabinets),
                histories.events(),
                list,
                dispatches(random, night),
                List.copyOf(referenceUnits),
                dockHand,
                arrivals,
                DemoBench.of(seed, night, technician));
    }

    private List<Dispatch> dispatches(Random random, LocalDate night) {
        List<Dispatch> dispatches = new ArrayList<>();
        List<Map<String, Integer>> wanted = List.of(
                Map.of("SPIN12", 24, "UNDR215", 12),
                Map.of("DUNE15B", 18, "UNDR215", 4, "SALT12A", 6),
                Map.of("HEAD3", 12, "PEBL8", 16),
                Map.of("SPIN12", 12, "DUNE15B", 8));
        LocalDate outOn = night.plusDays(1);
        for (int i = 0; i < wanted.size(); i++) {
            List<Dispatch.Line> lines = wanted.get(i).entrySet().stream()
                    .sorted(Map.Entry.comparingByKey())
                    .map(e -> new Dispatch.Line(e.getKey(), e.getValue()))
                    .toList();
            dispatches.add(new Dispatch(
                    id("dispatch-" + i),
                    String.format(Locale.ROOT, "MC-%05d", 30_000 + 10 * i + random.nextInt(10)),
                    HouseNames.customer(random),
                    outOn,
                    outOn.plusDays(2 + random.nextInt(3)),
                    lines));
            outOn = outOn.plusDays(1 + random.nextInt(3));
        }
        return List.copyOf(dispatches);
    }

    private UUID id(String what) {
        return UUID.nameUUIDFromBytes((SITE_NAME + "/" + seed + "/" + what).getBytes(StandardCharsets.UTF_8));
    }

    private static String shelfPlace(int index) {
        return String.format(Locale.ROOT, "%c-%02d", (char) ('A' + index / 20), 1 + index % 20);
    }
}
