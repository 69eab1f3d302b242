package org.docksweep.kiosk.commands;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import org.docksweep.kiosk.spool.Wire;
import tools.jackson.core.JacksonException;
import tools.jackson.core.util.DefaultIndenter;
import tools.jackson.core.util.DefaultPrettyPrinter;

/** Reads and writes the JSON files of the commands; every error names its file. */
final class JsonFiles {
    /** A snapshot of a thousand cabinets with baselines has some tens of megabytes. */
    private static final long MAX_BYTES = 512L << 20;

    /** Lines end in a line feed on every system. */
    private static final DefaultPrettyPrinter READABLE =
            new DefaultPrettyPrinter().withObjectIndenter(new DefaultIndenter("  ", "\n"));

    private JsonFiles() {}

    static <T> T read(Path path, Class<T> type) throws IOException {
        byte[] bytes = bytes(path);
        try {
            return present(path, Wire.json().readValue(bytes, type));
        } catch (JacksonException e) {
            throw unreadable(path, e);
        }
    }

    static <T> List<T> readList(Path path, Class<T> element) throws IOException {
        byte[] bytes = bytes(path);
        try {
            List<T> list = Wire.json().readerForListOf(element).readValue(bytes);
            for (T entry : present(path, list)) {
                present(path, entry);
            }
            return list;
        } catch (JacksonException e) {
            throw unreadable(path, e);
        }
    }

    /** Writes a file that appears under its name only when complete. */
    static void write(Path path, Object value) throws IOException {
        write(path, bytesOf(value));
    }

    /** A value as it is written: indented, UTF-8. */
    static byte[] bytesOf(Object value) {
        return Wire.json().writer().with(READABLE).writeValueAsBytes(value);
    }

    static void write(Path path, byte[] bytes) throws IOException {
        Path parent = path.toAbsolutePath().getParent();
        if (parent == null || !Files.isDirectory(parent)) {
            throw new IOException(path + " cannot be written: there is no folder " + parent);
        }
        Path part = path.resolveSibling(path.getFileName() + ".part");
        try {
            Files.write(part, bytes);
            Files.move(part, path, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(part);
        }
    }

    private static byte[] bytes(Path path) throws IOException {
        if (!Files.isRegularFile(path)) {
            throw new IOException("there is no file " + path);
        }
        if (Files.size(path) > MAX_BYTES) {
            throw new IOException(path + " must have at most " + MAX_BYTES + " bytes, but has " + Files.size(path));
        }
        return Files.readAllBytes(path);
    }

    private static <T> T present(Path path, T value) throws IOException {
        if (value == null) {
            throw new IOException(path + " cannot be read: it holds null where a value is expected");
        }
        return value;
    }

    private static IOException unreadable(Path path, JacksonException e) {
        String where =
                e.getLocation() == null ? "" : ", line " + e.getLocation().getLineNr();
        return new IOException(path + where + ": " + e.getOriginalMessage(), e);
    }
}
