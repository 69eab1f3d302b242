package org.docksweep.kiosk.commands;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The committed recordings judged by the command itself, on this Java runtime and on the newest one installed. */
class ReplayOnJdkIT {
    @TempDir
    Path folder;

    @Test
    void judgesTheSameOnEveryRuntimeByteForByte() throws Exception {
        assertReplays(Path.of(System.getProperty("java.home")));
        Optional<Path> newer = JavaHomes.newer();
        if (newer.isEmpty()) {
            // No reason to skip: this runtime has been compared with what was stored.
            System.out.println("replay: no newer long-term Java runtime is installed (JAVA_HOME_25, /usr/lib/jvm);"
                    + " compared on release " + Runtime.version().feature() + " only");
            return;
        }
        assertReplays(newer.get());
    }

    private void assertReplays(Path javaHome) throws IOException, InterruptedException {
        CommandRun run = ChildProcess.java(javaHome, folder, ReplaySet.command(folder));
        assertThat(run.exitCode()).as(run.err()).isZero();
        Files.writeString(folder.resolve("verdicts.csv"), run.out());
        for (String file : new String[] {"verdicts.csv", "readings.csv", "judgements.json"}) {
            assertThat(folder.resolve(file))
                    .as("%s on %s", file, javaHome)
                    .hasSameBinaryContentAs(ReplaySet.FOLDER.resolve(file));
        }
        System.out.println("replay: identical byte for byte on " + javaHome);
    }
}
