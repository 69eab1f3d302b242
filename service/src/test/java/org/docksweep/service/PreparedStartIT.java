package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The start with the parts that the build chose, from the runnable jar taken apart and its archive of classes. */
class PreparedStartIT {
    private static final long PATIENCE_S = 120;

    @TempDir
    Path folder;

    @Test
    void startsAndAnswers() throws Exception {
        Ended ended = start("--docksweep.stop-when-ready=true");

        assertThat(ended.words())
                .contains("Starting AOT-processed DocksweepService")
                .contains("Started DocksweepService");
        assertThat(ended.code()).isZero();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "--docksweep.database.replica-url=jdbc:h2:mem:other",
                "--spring.profiles.active=metrics",
                "--springdoc.api-docs.enabled=true"
            })
    void settingsThatNeedOtherPartsAreRefusedAndSaidHow(String setting) throws Exception {
        Ended ended = start(setting);

        assertThat(ended.code()).isEqualTo(1);
        assertThat(ended.words())
                .contains(setting.substring(2).replace("=true", "").replaceFirst("=jdbc.*", ""))
                .contains("Leave -Dspring.aot.enabled=true out")
                .doesNotContain("\tat org.");
    }

    private record Ended(int code, String words) {}

    private Ended start(String setting) throws Exception {
        Path log = folder.resolve("service.log");
        Path jar = jar();
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Dspring.aot.enabled=true",
                "-XX:SharedArchiveFile=" + jar.resolveSibling("classes.jsa"),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-jar",
                jar.toString(),
                "--server.port=0",
                "--docksweep.data-dir=" + folder.resolve("data"),
                setting));
        Process process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(log.toFile())
                .redirectInput(new File("/dev/null"))
                .start();
        try {
            assertThat(process.waitFor(PATIENCE_S, TimeUnit.SECONDS)).isTrue();
            return new Ended(process.exitValue(), Files.readString(log));
        } finally {
            process.destroyForcibly();
        }
    }

    /** The newest, where builds of several versions lie. */
    private static Path jar() throws Exception {
        Path classes = Path.of(DocksweepService.class
                .getProtectionDomain()
                .getCodeSource()
                .getLocation()
                .toURI());
        try (Stream<Path> files = Files.list(classes.getParent())) {
            Path name = files.filter(f -> f.getFileName().toString().endsWith("-exec.jar"))
                    .max(Comparator.comparingLong(f -> f.toFile().lastModified()))
                    .orElseThrow()
                    .getFileName();
            Path apart = classes.resolveSibling(name.toString().replaceFirst("\\.jar$", ""));
            // A build may leave it out (quick.start.skip).
            return Files.exists(apart.resolve("classes.jsa")) ? apart.resolve(name) : classes.resolveSibling(name);
        }
    }
}
