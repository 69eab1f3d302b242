package org.docksweep.fleet;

import static org.docksweep.fleet.Require.positive;
import static org.docksweep.fleet.Require.text;

import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * A cabinet model: what all cabinets of this kind have in common.
 *
 * @param code short code, unique in the fleet
 * @param name name in words
 * @param feed how it is driven
 * @param widthMm width of the front, in millimetres
 * @param heightMm height of the front, in millimetres
 * @param massKg mass in kilograms (cautions: two people lift from 25 kg, common practice, no source)
 * @param positions driver positions, at least one
 * @param enclosures air volumes and horns; every position belongs to exactly one
 * @param testPoints test points, at least one
 */
public record CabinetModel(
        String code,
        String name,
        Feed feed,
        double widthMm,
        double heightMm,
        double massKg,
        List<DriverPosition> positions,
        List<Enclosure> enclosures,
        List<TestPoint> testPoints) {

    public CabinetModel {
        text("cabinet model code", code);
        text("cabinet model name", name);
        if (feed == null) {
            throw new IllegalArgumentException("cabinet model " + code + ": feed must be PASSIVE, BIAMPED or POWERED");
        }
        positive("cabinet model " + code + " widthMm", widthMm);
        positive("cabinet model " + code + " heightMm", heightMm);
        positive("cabinet model " + code + " massKg", massKg);
        positions = Require.notEmpty("cabinet model " + code + " positions", positions);
        enclosures = Require.notEmpty("cabinet model " + code + " enclosures", enclosures);
        testPoints = Require.notEmpty("cabinet model " + code + " testPoints", testPoints);
        checkReferences(code, positions, enclosures, testPoints);
    }

    private static void checkReferences(
            String code, List<DriverPosition> positions, List<Enclosure> enclosures, List<TestPoint> testPoints) {
        Set<String> known = new HashSet<>();
        for (DriverPosition position : positions) {
            if (!known.add(position.code())) {
                throw new IllegalArgumentException(
                        "cabinet model " + code + ": position " + position.code() + " is given twice");
            }
        }
        Set<String> housed = new HashSet<>();
        for (Enclosure enclosure : enclosures) {
            for (String position : enclosure.positionCodes()) {
                requireKnown(code, "enclosure " + enclosure.id(), known, position);
                if (!housed.add(position)) {
                    throw new IllegalArgumentException(
                            "cabinet model " + code + ": position " + position + " is in two enclosures");
                }
            }
        }
        if (!housed.equals(known)) {
            Set<String> homeless = new HashSet<>(known);
            homeless.removeAll(housed);
            throw new IllegalArgumentException(
                    "cabinet model " + code + ": position " + homeless + " is in no enclosure; add one");
        }
        Set<String> points = new HashSet<>();
        for (TestPoint point : testPoints) {
            if (!points.add(point.code())) {
                throw new IllegalArgumentException(
                        "cabinet model " + code + ": test point " + point.code() + " is given twice");
            }
            point.positionCodes().forEach(p -> requireKnown(code, "test point " + point.code(), known, p));
            for (NetworkElement element : point.elements()) {
                if (element instanceof NetworkElement.Driver driver) {
                    requireKnown(code, "driver element " + driver.id(), known, driver.positionCode());
                }
            }
        }
    }

    private static void requireKnown(String code, String where, Set<String> known, String position) {
        if (!known.contains(position)) {
            throw new IllegalArgumentException("cabinet model " + code + ": " + where + " names position " + position
                    + ", but the positions are " + new java.util.TreeSet<>(known));
        }
    }

    /**
     * The position with a code.
     *
     * @param positionCode position code
     * @return the position
     * @throws IllegalArgumentException if the model has no such position
     */
    public DriverPosition position(String positionCode) {
        return positions.stream()
                .filter(p -> p.code().equals(positionCode))
                .findFirst()
                .orElseThrow(() ->
                        new IllegalArgumentException("cabinet model " + code + " has no position " + positionCode));
    }

    /**
     * The test point with a code.
     *
     * @param testPointCode test point code
     * @return the test point
     * @throws IllegalArgumentException if the model has no such test point
     */
    public TestPoint testPoint(String testPointCode) {
        return testPoints.stream()
                .filter(p -> p.code().equals(testPointCode))
                .findFirst()
                .orElseThrow(() ->
                        new IllegalArgumentException("cabinet model " + code + " has no test point " + testPointCode));
    }

    /**
     * The enclosure that houses a position.
     *
     * @param positionCode position code
     * @return the enclosure
     */
    public Enclosure enclosureOf(String positionCode) {
        return enclosures.stream()
                .filter(e -> e.positionCodes().contains(positionCode))
                .findFirst()
                .orElseThrow(() ->
                        new IllegalArgumentException("cabinet model " + code + " has no position " + positionCode));
    }
}
