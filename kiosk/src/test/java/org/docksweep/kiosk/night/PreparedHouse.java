package org.docksweep.kiosk.night;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.function.UnaryOperator;
import org.docksweep.kiosk.spool.Wire;
import org.docksweep.sweep.PracticeRig;

/**
 * What a house knew before the hire, swept once per build and seed: half a minute of processor time which each night of that seed
 * would spend to come to the same digits. The build gives a folder of its own, {@code docksweep.prepared}; without one each night
 * sweeps for itself.
 */
final class PreparedHouse {
    private static final String FOLDER = System.getProperty("docksweep.prepared");

    private PreparedHouse() {}

    static DockNight night(NightOptions options, PrintWriter out) {
        return night(options, out, UnaryOperator.identity());
    }

    static DockNight night(NightOptions options, PrintWriter out, UnaryOperator<PracticeRig> nightRig) {
        return new DockNight(options, out, nightRig, known(options.seed()));
    }

    private static BeforeTheHire known(long seed) {
        if (FOLDER == null) {
            return BeforeTheHire::sweep;
        }
        return (house, gate, correction, rigSettings, bench) -> {
            Path kept = Path.of(FOLDER).resolve("seed-" + seed + (bench ? "-bench" : "") + ".json");
            try {
                Files.createDirectories(kept.getParent());
                // Two virtual machines may want the same house.
                try (FileChannel only = FileChannel.open(
                                kept.resolveSibling(kept.getFileName() + ".lock"),
                                StandardOpenOption.CREATE,
                                StandardOpenOption.WRITE);
                        var lock = only.lock()) {
                    if (!Files.exists(kept)) {
                        Path part = kept.resolveSibling(kept.getFileName() + ".part");
                        Wire.json()
                                .writeValue(
                                        part.toFile(),
                                        BeforeTheHire.sweep(house, gate, correction, rigSettings, bench));
                        Files.move(part, kept, StandardCopyOption.ATOMIC_MOVE);
                    }
                    return Wire.json().readValue(kept.toFile(), BeforeTheHire.Known.class);
                }
            } catch (IOException e) {
                throw new UncheckedIOException("the house of seed " + seed + " cannot be kept in " + FOLDER, e);
            }
        };
    }
}
