package org.docksweep.kiosk.night;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** The folder of a night: empty at the start. */
final class NightFolder {
    /** Marks a folder as one that a night made and may empty. */
    private static final String MARK = ".docksweep-demo-night";

    private NightFolder() {}

    static Path fresh(Path folder) throws IOException {
        if (Files.exists(folder)) {
            boolean empty;
            try (Stream<Path> entries = Files.list(folder)) {
                empty = entries.findAny().isEmpty();
            }
            if (!empty && !Files.exists(folder.resolve(MARK))) {
                throw new IOException("the folder " + folder.toAbsolutePath()
                        + " holds files that no demo night made; give another one with --folder");
            }
            empty(folder);
        }
        Files.createDirectories(folder);
        Files.writeString(
                folder.resolve(MARK), "Made by the demo night, which empties this folder at its next start.\n");
        return folder;
    }

    private static void empty(Path folder) throws IOException {
        List<Path> deepestFirst;
        try (Stream<Path> tree = Files.walk(folder)) {
            deepestFirst = tree.sorted(Comparator.reverseOrder()).toList();
        }
        for (Path path : deepestFirst) {
            if (!path.equals(folder)) {
                Files.delete(path);
            }
        }
    }
}
