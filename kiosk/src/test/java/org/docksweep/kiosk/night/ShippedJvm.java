package org.docksweep.kiosk.night;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/** The Java options of the packaged kiosk, read from the script that packages it. */
final class ShippedJvm {
    private static final Path SCRIPT = Path.of("..", "docs", "scripts", "package-kiosk");
    private static final Pattern OPTION = Pattern.compile("--java-options (-\\S+)");

    private ShippedJvm() {}

    /** The options, in their order. */
    static List<String> options() throws IOException {
        List<String> options = OPTION.matcher(Files.readString(SCRIPT))
                .results()
                .map((MatchResult found) -> found.group(1))
                .toList();
        assertThat(options).as("options in " + SCRIPT).isNotEmpty();
        return options;
    }
}
