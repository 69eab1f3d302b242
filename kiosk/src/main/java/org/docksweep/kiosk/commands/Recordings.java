package org.docksweep.kiosk.commands;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.zip.ZipException;
import org.docksweep.acoustic.SoundEar;
import org.docksweep.kiosk.rig.RecordingKeeper;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.RecordingException;
import org.docksweep.sweep.RecordingFiles;
import org.docksweep.sweep.SweepAnalysis;

/** Recordings as a command finds them: a WAV file with its sidecar, or an archive of both. */
final class Recordings {
    /** Far above the largest WAV file and sidecar accepted together. */
    private static final long MAX_ARCHIVE_BYTES = 128L << 20;

    private Recordings() {}

    static Capture read(Path file) throws IOException {
        String name = file.getFileName() == null ? "" : file.getFileName().toString();
        if (!name.toLowerCase(Locale.ROOT).endsWith(".zip")) {
            return RecordingFiles.read(file);
        }
        if (!Files.isRegularFile(file)) {
            throw new RecordingException(name, "file", "is missing", "Give the path of an existing archive: " + file);
        }
        if (Files.size(file) > MAX_ARCHIVE_BYTES) {
            throw new RecordingException(
                    name,
                    "file size",
                    "must be at most " + MAX_ARCHIVE_BYTES + " bytes, but is " + Files.size(file),
                    "Give an archive of one recording");
        }
        try {
            return RecordingKeeper.read(file);
        } catch (ZipException | java.io.EOFException e) {
            RecordingException damaged = new RecordingException(
                    name, "archive", "is damaged (" + e.getMessage() + ")", "Copy it again from where it was made");
            damaged.initCause(e);
            throw damaged;
        }
    }

    static SweepAnalysis analyse(Path file, Capture capture) throws IOException {
        try {
            return SoundEar.analyser().analyse(capture);
        } catch (IllegalArgumentException e) {
            throw new IOException(file.getFileName() + ": sweep: " + e.getMessage(), e);
        }
    }
}
