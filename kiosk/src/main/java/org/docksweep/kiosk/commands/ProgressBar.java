package org.docksweep.kiosk.commands;

import java.io.PrintWriter;
import picocli.CommandLine.Option;

/**
 * Option and drawing of a progress bar on the error stream, so that the output stays clean for a pipe. One line that is
 * written over and erased at the end.
 */
final class ProgressBar {
    private static final int WIDTH = 30;

    @Option(
            names = {"-q", "--quiet"},
            description = "No progress bar.")
    private boolean quiet;

    private PrintWriter err;
    private int drawn;

    void begin(PrintWriter to) {
        err = quiet ? null : to;
        drawn = 0;
    }

    /**
     * Draws.
     *
     * @param done steps done
     * @param total steps in all, at least 1
     * @param doing what is being worked at
     */
    void show(int done, int total, String doing) {
        if (err == null) {
            return;
        }
        int full = WIDTH * done / total;
        String line = "[" + "#".repeat(full) + ".".repeat(WIDTH - full) + "] " + done + "/" + total + " " + doing;
        err.print("\r" + line + " ".repeat(Math.max(0, drawn - line.length())));
        err.flush();
        drawn = line.length();
    }

    void end() {
        if (err != null && drawn > 0) {
            err.print("\r" + " ".repeat(drawn) + "\r");
            err.flush();
            drawn = 0;
        }
    }
}
