package org.docksweep.kiosk.setup;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.docksweep.kiosk.rig.audio.AudioDevices;
import org.docksweep.kiosk.settings.KioskSettings;
import org.docksweep.kiosk.settings.SettingsFile;

/**
 * What the set-up walk works with.
 *
 * @param file where the settings are stored at the end
 * @param before settings in force; empty at the first start
 * @param papers folder of papers, named where no printer is chosen
 * @param language language to begin with
 * @param devices looks for sound devices
 * @param printers looks for print queues
 * @param ended hears how the walk ended
 */
public record SetUpParts(
        SettingsFile file,
        Optional<KioskSettings> before,
        Path papers,
        String language,
        Supplier<List<AudioDevices.Device>> devices,
        Supplier<List<Printer>> printers,
        Consumer<End> ended) {

    /**
     * A print queue.
     *
     * @param name its name
     * @param accepting whether it takes jobs now
     */
    public record Printer(String name, boolean accepting) {}

    /** How a walk ended. */
    public enum End {
        /** The settings are stored. */
        STORED,
        /** Nothing is stored. */
        LEFT,
        /** Nothing is stored, and somebody wants to practise. */
        PRACTICE
    }
}
