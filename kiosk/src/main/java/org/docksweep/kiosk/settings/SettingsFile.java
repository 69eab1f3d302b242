package org.docksweep.kiosk.settings;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.docksweep.kiosk.spool.Wire;
import tools.jackson.core.JacksonException;

/**
 * The settings of a kiosk as a file that only its owner can read, since the token is in it.
 *
 * @param path the file
 */
public record SettingsFile(Path path) {
    private static final String NAME = "settings.json";

    /**
     * The settings of a data folder.
     *
     * @param folder data folder of the kiosk
     * @return its file, which need not exist
     */
    public static SettingsFile in(Path folder) {
        return new SettingsFile(folder.resolve(NAME));
    }

    /**
     * Reads the settings.
     *
     * @return the settings; empty before the first set-up
     * @throws IOException if the file cannot be read, or does not hold settings; says what is wrong and never what stands in it
     */
    public Optional<KioskSettings> read() throws IOException {
        if (!Files.exists(path)) {
            return Optional.empty();
        }
        try {
            return Optional.of(Wire.json().readValue(Files.readAllBytes(path), KioskSettings.class));
        } catch (JacksonException e) {
            // The message of the reader may quote what stands there, the token too.
            Throwable root = e.getCause() instanceof IllegalArgumentException wrong ? wrong : null;
            throw new IOException(path + " does not hold settings of a kiosk"
                    + (root == null ? "" : ": " + root.getMessage())
                    + "; set the kiosk up again with --set-up, or mend the file");
        }
    }

    /**
     * Stores settings in place of what was there, whole or not at all.
     *
     * @param settings the settings
     * @throws IOException if the disk refuses
     */
    public void write(KioskSettings settings) throws IOException {
        OwnerFile.write(path, Wire.json().writerWithDefaultPrettyPrinter().writeValueAsBytes(settings));
    }
}
