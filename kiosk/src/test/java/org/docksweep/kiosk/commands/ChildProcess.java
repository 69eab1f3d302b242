package org.docksweep.kiosk.commands;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.docksweep.kiosk.Main;

/** A command in a process of its own, as a person starts it. */
final class ChildProcess {
    private static final long PATIENCE_S = 300;

    private ChildProcess() {}

    /** Runs the kiosk's program on a Java runtime; output goes to files in a folder. */
    static CommandRun java(Path javaHome, Path folder, String... arguments) throws IOException, InterruptedException {
        List<String> words = new ArrayList<>(List.of(
                javaHome.resolve("bin").resolve("java").toString(),
                "-Djava.awt.headless=true",
                "-classpath",
                System.getProperty("java.class.path"),
                Main.class.getName()));
        words.addAll(List.of(arguments));
        return run(folder, words.toArray(String[]::new));
    }

    static CommandRun run(Path folder, String... words) throws IOException, InterruptedException {
        Path out = folder.resolve("stdout.txt");
        Path err = folder.resolve("stderr.txt");
        Process process = new ProcessBuilder(words)
                .redirectOutput(out.toFile())
                .redirectError(err.toFile())
                .start();
        try {
            assertThat(process.waitFor(PATIENCE_S, TimeUnit.SECONDS))
                    .as("%s ended within %d s", words[0], PATIENCE_S)
                    .isTrue();
        } finally {
            process.destroyForcibly();
        }
        return new CommandRun(
                process.exitValue(),
                java.nio.file.Files.readString(out, StandardCharsets.UTF_8),
                java.nio.file.Files.readString(err, StandardCharsets.UTF_8));
    }
}
