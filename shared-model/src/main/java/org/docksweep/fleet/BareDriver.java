package org.docksweep.fleet;

import java.util.List;

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
}
