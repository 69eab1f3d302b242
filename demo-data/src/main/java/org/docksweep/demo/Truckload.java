package org.docksweep.demo;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.docksweep.contract.DemoHouse.Kind;
import org.docksweep.contract.DemoHouse.Truth;
import org.docksweep.demo.physics.Climate;
import org.docksweep.demo.physics.Fault;
import org.docksweep.demo.physics.FaultKind;
import org.docksweep.fleet.VisualItem;

/**
 * Loads the truck of one night: 24 cabinets on the list, one of which stays away, and one that nobody expected. The same
 * kinds of trouble come every night, on other units, in another order, at another temperature.
 */
final class Truckload {
    /** How many of each model went out on the order; 24 in all. */
    static final Map<String, Integer> ON_THE_LIST = onTheList();

    private final Random random;
    private final double ambientCelsius;
    private final List<TruckItem> items = new ArrayList<>();
    private final Map<String, Deque<PhysicalUnit>> due;

    /** Where the load came from and what it is. */
    record Loaded(List<TruckItem> items, PhysicalUnit missing) {}

    private Truckload(Random random, double ambientCelsius, Map<String, Deque<PhysicalUnit>> due) {
        this.random = random;
        this.ambientCelsius = ambientCelsius;
        this.due = due;
    }

    private static Map<String, Integer> onTheList() {
        Map<String, Integer> counts = new LinkedHashMap<>();
        counts.put("SPIN12", 8);
        counts.put("DUNE15B", 5);
        counts.put("UNDR215", 3);
        counts.put("PEBL8", 4);
        counts.put("HEAD3", 2);
        counts.put("SALT12A", 2);
        return Collections.unmodifiableMap(counts);
    }

    /**
     * Loads the truck.
     *
     * @param random randomness of the night
     * @param ambientCelsius air at the dock
     * @param listed units on the list, as {@link #ON_THE_LIST} counts them
     * @param stranger a unit that is not on the list but comes
     * @param impostor a Pebble 8 that carries the label of a listed Spindrift 12
     * @return the load in the order it comes off
     */
    static Loaded load(
            Random random,
            double ambientCelsius,
            List<PhysicalUnit> listed,
            PhysicalUnit stranger,
            PhysicalUnit impostor) {
        Map<String, Deque<PhysicalUnit>> due = new LinkedHashMap<>();
        for (PhysicalUnit unit : listed) {
            due.computeIfAbsent(unit.modelCode(), m -> new ArrayDeque<>()).add(unit);
        }
        Truckload truck = new Truckload(random, ambientCelsius, due);
        truck.loadFaulty();
        truck.loadVisualDamage();
        PhysicalUnit mislabelled = truck.next("SPIN12");
        truck.add(
                new PhysicalUnit(mislabelled.tag(), impostor.modelCode(), impostor.unitSeed(), impostor.ageYears()),
                List.of(),
                Set.of(),
                new Truth(Kind.WRONG_LABEL, null, "a Pebble 8 with the label of a Spindrift 12"));
        truck.add(
                truck.next("SPIN12"),
                List.of(),
                Set.of(),
                new Truth(Kind.NOT_PLUGGED, null, "lead not pushed home at first; healthy"));
        PhysicalUnit missing = truck.next("PEBL8");
        truck.loadHealthy(stranger);
        Collections.shuffle(truck.items, random);
        return new Loaded(List.copyOf(truck.items), missing);
    }

    private void loadFaulty() {
        hard("SPIN12", Fault.of(FaultKind.DRIVER_OPEN, "HF"), "HF", "HF driver open behind the crossover");
        double factor = random.nextBoolean() ? 2 : 0.5;
        hard(
                "SPIN12",
                Fault.of(FaultKind.WRONG_IMPEDANCE, "HF", factor),
                "HF",
                "HF diaphragm of " + (factor == 2 ? "twice" : "half") + " the rated impedance");
        hard("DUNE15B", Fault.of(FaultKind.DRIVER_OPEN, "HF"), "HF", "HF driver open at its own terminals");
        hard(
                "DUNE15B",
                Fault.of(FaultKind.DRIVER_SHORTED, "LF", 0.05 + 0.2 * random.nextDouble()),
                "LF",
                "LF coil shorted");
        String cone = random.nextBoolean() ? "LF1" : "LF2";
        hard("UNDR215", Fault.of(FaultKind.DRIVER_OPEN, cone), cone, "one of two LF drivers open");
        hard("PEBL8", Fault.of(FaultKind.DRIVER_OPEN, "LF"), "LF", "LF driver open behind the crossover");
        if (random.nextBoolean()) {
            hard("SPIN12", Fault.of(FaultKind.PART_OPEN, "C3"), "HF", "crossover capacitor of the HF branch open");
        } else {
            hard("DUNE15B", Fault.of(FaultKind.SEIZED, "HF"), "HF", "HF diaphragm cannot move");
        }
        add(
                next("SALT12A"),
                List.of(Fault.of(FaultKind.WAY_DEAD, "HF")),
                Set.of(),
                new Truth(Kind.SOFT_FAULT, "HF", "HF amplifier of a powered cabinet dead"));
    }

    private void loadVisualDamage() {
        VisualItem seen = random.nextInt(3) == 0 ? VisualItem.WET : VisualItem.HANDLES;
        add(
                next("HEAD3"),
                List.of(),
                EnumSet.of(VisualItem.RIGGING, seen),
                new Truth(Kind.VISUAL_SAFETY, null, "rigging point bent; healthy otherwise"));
    }

    private void loadHealthy(PhysicalUnit stranger) {
        for (Deque<PhysicalUnit> rest : due.values()) {
            while (!rest.isEmpty()) {
                boolean scuffed = random.nextInt(8) == 0;
                add(
                        rest.poll(),
                        List.of(),
                        scuffed ? EnumSet.of(VisualItem.GRILLE) : Set.of(),
                        new Truth(Kind.HEALTHY, null, scuffed ? "healthy, grille dented" : "healthy"));
            }
        }
        add(stranger, List.of(), Set.of(), new Truth(Kind.HEALTHY, null, "healthy, but not on the list"));
    }

    private PhysicalUnit next(String modelCode) {
        Deque<PhysicalUnit> left = due.get(modelCode);
        if (left == null || left.isEmpty()) {
            throw new IllegalStateException("the truck has no " + modelCode + " left to load");
        }
        return left.poll();
    }

    private void hard(String modelCode, Fault fault, String positionCode, String words) {
        add(next(modelCode), List.of(fault), Set.of(), new Truth(Kind.HARD_FAULT, positionCode, words));
    }

    private void add(PhysicalUnit unit, List<Fault> faults, Set<VisualItem> damage, Truth truth) {
        items.add(new TruckItem(unit.tag(), unit, faults, climate(), Set.copyOf(damage), truth));
    }

    /** Some degrees from the hall's air: the truck was elsewhere, and some cabinets played an hour ago. */
    private Climate climate() {
        double truck = between(ambientCelsius + 5 * random.nextDouble() - 2.5);
        double coil = between(truck + (random.nextInt(4) == 0 ? 6 * random.nextDouble() : 0));
        return new Climate(coil, truck, truck, between((truck + ambientCelsius) / 2));
    }

    private static double between(double celsius) {
        return Math.max(5, Math.min(35, celsius));
    }
}
