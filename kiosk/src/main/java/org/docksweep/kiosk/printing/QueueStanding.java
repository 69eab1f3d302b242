package org.docksweep.kiosk.printing;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Whether a print queue of CUPS moves. Java prints into a stopped queue without a word: the job then waits unseen, which at a dock means
 * a cabinet without its tag. Asks {@code lpstat}, whose English words and IPP keywords (RFC 8011, 5.4.12 printer-state-reasons) are
 * read; where there is no such program nothing is known.
 */
final class QueueStanding {
    private static final Logger LOG = LoggerFactory.getLogger(QueueStanding.class);
    private static final long PATIENCE_S = 5;
    private static final String ALERTS = "Alerts:";
    /** Said by queues that work, or said already. */
    private static final List<String> HARMLESS = List.of("none", "paused", "cups-waiting-for-job-completed");

    private QueueStanding() {}

    /**
     * What holds a queue up.
     *
     * @param queue its name
     * @return words about it; empty when it moves, or when this machine cannot tell
     */
    static Optional<String> trouble(String queue) {
        try {
            ProcessBuilder ask = new ProcessBuilder("lpstat", "-l", "-p", queue);
            ask.environment().put("LC_ALL", "C");
            Process lpstat = ask.redirectErrorStream(true).start();
            String said = new String(lpstat.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            if (!lpstat.waitFor(PATIENCE_S, TimeUnit.SECONDS)) {
                lpstat.destroyForcibly();
                return Optional.empty();
            }
            return read(said);
        } catch (IOException e) {
            LOG.debug("This machine has no lpstat, so a print queue that stands still is not noticed", e);
            return Optional.empty();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return Optional.empty();
        }
    }

    /** Reads the answer of {@code lpstat -l -p}. */
    static Optional<String> read(String said) {
        List<String> words = new ArrayList<>();
        List<String> lines = said.lines().toList();
        if (!lines.isEmpty() && lines.get(0).contains(" disabled since ")) {
            words.add("stopped");
        }
        for (String line : lines) {
            if (line.strip().startsWith(ALERTS)) {
                for (String alert :
                        line.strip().substring(ALERTS.length()).strip().split("[ ,]+")) {
                    if (!alert.isEmpty() && !HARMLESS.contains(alert)) {
                        words.add(plain(alert));
                    }
                }
            }
        }
        return words.isEmpty() ? Optional.empty() : Optional.of(String.join(", ", words));
    }

    /** An IPP keyword such as {@code media-empty-error} without its grade. */
    private static String plain(String keyword) {
        return keyword.toLowerCase(Locale.ROOT)
                .replaceAll("-(error|warning|report)$", "")
                .replace("media-empty", "out of paper")
                .replace("media-needed", "out of paper")
                .replace('-', ' ');
    }
}
