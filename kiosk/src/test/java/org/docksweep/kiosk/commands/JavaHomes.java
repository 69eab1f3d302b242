package org.docksweep.kiosk.commands;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Properties;
import java.util.stream.Stream;

/** Java runtimes of this machine, as their file {@code release} names them. */
final class JavaHomes {
    private static final Path SYSTEM_FOLDER = Path.of("/usr/lib/jvm");
    /** Releases with long-term support, newest first. */
    private static final List<Integer> LONG_TERM = List.of(25, 21);

    private JavaHomes() {}

    /** The newest long-term release newer than the running one, from JAVA_HOME_25 or the system's folder. */
    static Optional<Path> newer() throws IOException {
        for (int release : LONG_TERM) {
            if (release > Runtime.version().feature()) {
                String given = System.getenv("JAVA_HOME_" + release);
                if (given != null && Files.isExecutable(Path.of(given, "bin", "java"))) {
                    return Optional.of(Path.of(given));
                }
                Optional<Path> found = installed(release);
                if (found.isPresent()) {
                    return found;
                }
            }
        }
        return Optional.empty();
    }

    private static Optional<Path> installed(int release) throws IOException {
        if (!Files.isDirectory(SYSTEM_FOLDER)) {
            return Optional.empty();
        }
        try (Stream<Path> homes = Files.list(SYSTEM_FOLDER)) {
            return homes.filter(home -> Files.isExecutable(home.resolve("bin/java")))
                    .filter(home -> release(home) == release)
                    .min(Comparator.naturalOrder());
        }
    }

    private static int release(Path home) {
        Properties properties = new Properties();
        try (InputStream in = Files.newInputStream(home.resolve("release"))) {
            properties.load(in);
        } catch (IOException e) {
            // A folder without it is no complete runtime.
            return 0;
        }
        String version = properties.getProperty("JAVA_VERSION", "\"0\"").replace("\"", "");
        return Integer.parseInt(version.split("[.+-]")[0]);
    }
}
