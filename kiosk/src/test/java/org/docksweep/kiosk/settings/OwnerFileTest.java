package org.docksweep.kiosk.settings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIOException;

import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

class OwnerFileTest {
    private static final String TOKEN = "a-token-nobody-may-read-0123456789";

    @TempDir
    private Path folder;

    private static KioskSettings settings(String printer) {
        return new KioskSettings(
                URI.create("https://docksweep.example"),
                TOKEN,
                7,
                "audio",
                Map.of("id", "dock"),
                printer,
                null,
                "DARK",
                1,
                "de",
                10,
                "B-",
                7);
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void canBeReadByItsOwnerOnlyAlsoAfterAChange() throws Exception {
        SettingsFile file = SettingsFile.in(folder.resolve("new"));

        file.write(settings(null));
        file.write(settings("Labels"));

        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file.path())))
                .isEqualTo("rw-------");
        assertThat(file.read()).contains(settings("Labels"));
        try (var all = Files.list(folder.resolve("new"))) {
            assertThat(all).as("nothing else is left behind").containsExactly(file.path());
        }
    }

    @Test
    void keepsWhatWasThereWhenItCannotBeReplaced() throws Exception {
        Path file = folder.resolve("settings.json");
        // A folder with something in it cannot be replaced by a file.
        Files.createDirectories(file.resolve("in-the-way"));

        assertThatIOException().isThrownBy(() -> new SettingsFile(file).write(settings(null)));

        try (var all = Files.list(folder)) {
            assertThat(all).containsExactly(file);
        }
    }

    @Test
    void hasNoSettingsBeforeTheFirstSetUp() throws Exception {
        assertThat(SettingsFile.in(folder).read()).isEmpty();
    }

    @Test
    void saysWhatIsWrongWithAFileAndNeverWhatTheTokenIs() throws Exception {
        SettingsFile file = SettingsFile.in(folder);
        file.write(settings(null));
        String good = Files.readString(file.path());
        for (String wrong : new String[] {
            good.replace("\"number\" : 7", "\"number\" : 700"),
            good.substring(0, good.length() / 2),
            "\"" + TOKEN + "\"",
            ""
        }) {
            Files.writeString(file.path(), wrong, StandardCharsets.UTF_8);

            assertThatIOException()
                    .isThrownBy(file::read)
                    .withMessageContainingAll("settings.json", "--set-up")
                    .satisfies(e -> assertThat(org.assertj.core.util.Throwables.getStackTrace(e))
                            .doesNotContain(TOKEN));
        }
    }

    @Test
    void namesNoTokenInItsWords() {
        assertThat(settings(null).toString()).doesNotContain(TOKEN).contains("docksweep.example");
    }
}
