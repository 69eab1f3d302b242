package org.docksweep.kiosk.commands;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.nio.file.Path;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;

/** Tests of the open recording format run a script; without python3 they skip and say so, or fail where it is required. */
final class Python {
    static final String COMMAND = "python3";

    /** Set to true where a missing python3 is a failure. */
    private static final String REQUIRED = "docksweep.require.python";

    private Python() {}

    static void need() {
        boolean there = Stream.of(System.getenv("PATH").split(Pattern.quote(File.pathSeparator)))
                .anyMatch(folder -> Path.of(folder, COMMAND).toFile().canExecute());
        if (Boolean.getBoolean(REQUIRED)) {
            assertThat(there)
                    .as("python3 is required (-D%s=true), but is not on the PATH; install python3", REQUIRED)
                    .isTrue();
        }
        Assumptions.assumeTrue(
                there, "skipped: no python3 on the PATH. Install it to test the recording format from outside.");
    }
}
