package org.docksweep.demo;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import org.docksweep.demo.physics.DriverMechanics;
import org.docksweep.fleet.DriverBenchData;
import org.docksweep.fleet.ModelBook;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;

/**
 * The invented models of the demo house, read from resources: {@code models.json} is what the gate may know,
 * {@code drivers.json} holds mechanical values only the simulator needs.
 */
public final class DemoModels {
    private static final JsonMapper JSON = new JsonMapper();

    private DemoModels() {}

    /**
     * The fleet's cabinet and driver models.
     *
     * @return a new book
     */
    public static ModelBook book() {
        return read("models.json", new TypeReference<>() {});
    }

    /**
     * Mechanical values of the driver models.
     *
     * @return values by driver model code, one for each driver model of {@link #book()}
     */
    public static Map<String, DriverMechanics> mechanics() {
        return Mechanics.BY_CODE;
    }

    /** Numbers of the driver models that the bench works by. */
    static List<DriverBenchData> benchData() {
        return read("bench.json", new TypeReference<>() {});
    }

    /** The catalogue with what lies on the shelf. */
    static List<DemoBench.Shelf> shelves() {
        return read("parts.json", new TypeReference<>() {});
    }

    /** Read once: every cabinet built asks for it. */
    private static final class Mechanics {
        static final Map<String, DriverMechanics> BY_CODE =
                Map.copyOf(read("drivers.json", new TypeReference<Map<String, DriverMechanics>>() {}));
    }

    static <T> T read(String resource, TypeReference<T> type) {
        try (InputStream in = DemoModels.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalStateException(
                        "resource " + resource + " is missing beside DemoModels; rebuild demo-data");
            }
            return JSON.readValue(in, type);
        } catch (IOException e) {
            throw new UncheckedIOException("resource " + resource + " cannot be read", e);
        }
    }
}
