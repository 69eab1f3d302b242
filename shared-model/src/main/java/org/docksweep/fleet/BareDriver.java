package org.docksweep.fleet;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * A driver on its own on the bench rig, described as a cabinet model with one position and one test point, so that the
 * same gate judges it: a cone driver in free air, a compression driver on the bench's test horn.
 */
public final class BareDriver {
    /** Code of the test point of every bare driver. */
    public static final String TEST_POINT = "BARE";
    /** Code of its one position. */
    public static final String POSITION = "UNIT";

    private static final String PREFIX = "BARE-";
    private static final double OUTLINE_MM = 400;

    /** For recordings that are there already: it says nothing of what may be played. */
    private static final LevelMask WHOLE_BAND =
            new LevelMask(List.of(new LevelMask.Point(10, 1), new LevelMask.Point(20_000, 1)));

    private BareDriver() {}

    /**
     * Code under which references of a bare driver stand.
     *
     * @param driverModelCode driver model
     * @return the code
     */
    public static String modelCode(String driverModelCode) {
        return PREFIX + driverModelCode;
    }

    /**
     * The driver model a reference is of.
     *
     * @param modelCode code as {@link #modelCode} makes it
     * @return code of the driver model
     * @throws IllegalArgumentException if it is no code of a bare driver
     */
    public static String driverModelCode(String modelCode) {
        if (!modelCode.startsWith(PREFIX)) {
            throw new IllegalArgumentException(modelCode + " is no code of a bare driver; expected " + PREFIX + "...");
        }
        return modelCode.substring(PREFIX.length());
    }

    /**
     * The driver model as something the gate can judge.
     *
     * @param driver driver model
     * @param mask voltage allowed on the bench rig
     * @return a model with position {@link #POSITION} and test point {@link #TEST_POINT}
     */
    public static CabinetModel model(DriverModel driver, LevelMask mask) {
        boolean cone = driver.kind() == DriverKind.CONE;
        return new CabinetModel(
                modelCode(driver.code()),
                driver.name(),
                Feed.PASSIVE,
                OUTLINE_MM,
                OUTLINE_MM,
                1,
                List.of(new DriverPosition(
                        POSITION,
                        cone ? Way.LF : Way.HF,
                        driver.code(),
                        OUTLINE_MM / 2,
                        OUTLINE_MM / 2,
                        0.8 * OUTLINE_MM,
                        0.8 * OUTLINE_MM)),
                List.of(new Enclosure(
                        "air", cone ? EnclosureKind.FREE_AIR : EnclosureKind.HORN, List.of(POSITION), 0, 0, 0)),
                List.of(new TestPoint(
                        TEST_POINT,
                        TestPointKind.BARE_DRIVER,
                        "+ / -",
                        List.of(POSITION),
                        driver.ratedImpedanceOhm(),
                        mask,
                        List.of(new NetworkElement.Driver("D", "in", "0", POSITION)))));
    }

    /**
     * The drivers of a house as something the gate can judge, one against the other: a wrong driver on the bench is known
     * by its curve.
     *
     * @param drivers driver models
     * @param masks voltage allowed on the bench rig, by driver model code; a driver without one is left out
     * @return a book of bare drivers
     */
    public static ModelBook book(List<DriverModel> drivers, Map<String, LevelMask> masks) {
        List<CabinetModel> bare = drivers.stream()
                .filter(d -> masks.containsKey(d.code()))
                .map(d -> model(d, masks.get(d.code())))
                .toList();
        return new ModelBook(bare, drivers);
    }

    /**
     * A book that knows every driver on its own as well, to read recordings with. Not for playing: its level masks say
     * nothing of what a driver stands.
     *
     * @param book models of a house
     * @return the same and its bare drivers
     */
    public static ModelBook recordedWith(ModelBook book) {
        List<CabinetModel> all = new ArrayList<>(book.cabinetModels());
        book.driverModels().forEach(d -> all.add(model(d, WHOLE_BAND)));
        return new ModelBook(all, book.driverModels());
    }
}
