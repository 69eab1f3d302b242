package org.docksweep.kiosk.commands;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The list inside each runnable jar (CycloneDX 1.6, ECMA-424) names every library in it, with its licence. */
class SbomIT {
    /** Set by the full run. Maven makes no list when it is offline. */
    private static final String DEMAND = "docksweep.require.sbom";

    private static final String LIST = "META-INF/sbom/application.cdx.json";
    private static final String LIBRARIES = "BOOT-INF/lib/";

    /** Put in by the packaging itself, from Spring Boot's own loader. */
    private static final String TOOLS = "spring-boot-jarmode-tools";

    @ParameterizedTest
    @ValueSource(strings = {"service", "kiosk"})
    void namesEveryLibraryAndItsLicence(String module) throws IOException {
        try (ZipFile jar = new ZipFile(jar(module).toFile())) {
            ZipEntry entry = jar.getEntry(LIST);
            if (entry == null) {
                missing(jar.getName() + " has no " + LIST + "; build it without -o");
            }
            JsonNode list = JsonMapper.shared().readTree(jar.getInputStream(entry));
            assertThat(list.get("bomFormat").asString()).isEqualTo("CycloneDX");
            Set<String> listed = new TreeSet<>();
            Set<String> unlicensed = new TreeSet<>();
            for (JsonNode part : list.get("components")) {
                String name = part.get("name").asString();
                listed.add(name + "-" + part.get("version").asString() + ".jar");
                if (!part.get("group").asString().equals("org.docksweep")
                        && part.path("licenses").isEmpty()) {
                    unlicensed.add(name);
                }
            }
            Set<String> inside = new TreeSet<>();
            jar.stream()
                    .map(ZipEntry::getName)
                    .filter(n -> n.startsWith(LIBRARIES) && n.endsWith(".jar"))
                    .map(n -> n.substring(LIBRARIES.length()))
                    .filter(n -> !n.startsWith(TOOLS))
                    .forEach(inside::add);
            assertThat(inside).hasSizeGreaterThan(10);
            assertThat(listed).containsAll(inside);
            assertThat(unlicensed).isEmpty();
            System.out.println(module + ": " + inside.size() + " libraries inside, all listed with a licence");
        }
    }

    /** The newest, where builds of several versions lie. */
    private static Path jar(String module) throws IOException {
        Path target = Path.of("..", module, "target");
        if (!Files.isDirectory(target)) {
            missing(target + " is not there");
        }
        try (Stream<Path> files = Files.list(target)) {
            Path newest = files.filter(f -> f.getFileName().toString().endsWith("-exec.jar"))
                    .max(Comparator.comparingLong(f -> f.toFile().lastModified()))
                    .orElse(null);
            if (newest == null) {
                missing("no runnable jar in " + target);
            }
            return newest;
        }
    }

    private static void missing(String words) {
        if (Boolean.getBoolean(DEMAND)) {
            throw new AssertionError(words);
        }
        System.out.println("SKIPPED: " + words);
        Assumptions.abort(words);
    }
}
