package org.docksweep.kiosk.printing;

import java.nio.file.Path;

/**
 * What became of a paper. Its PDF always lies in the folder for papers as well.
 *
 * @param outcome how it went
 * @param file the PDF, or null when it could not even be made
 * @param words what went wrong, empty when nothing did
 */
public record PrintResult(Outcome outcome, Path file, String words) {
    /** How it went. */
    public enum Outcome {
        PRINTED,
        /** The queue has it, but stands still: it comes out by itself once that is mended. */
        WAITS_AT_PRINTER,
        /** No printer is set: only the PDF was made. */
        SAVED,
        FAILED
    }
}
