package org.docksweep.kiosk.dock;

import java.util.ArrayList;
import java.util.List;
import org.docksweep.kiosk.spool.OutboxCounts;

/** What a fault said and did, one line each, printed with its counts at the end. */
final class FaultTable {
    private final List<String> lines = new ArrayList<>();

    /**
     * Writes a fault down.
     *
     * @param fault its name
     * @param message what the person saw
     * @param before the spool before the fault
     * @param during the spool while it lasted
     * @param after the spool when it was over
     */
    synchronized void add(String fault, String message, OutboxCounts before, OutboxCounts during, OutboxCounts after) {
        lines.add(String.format(
                "| %s | %s | %s | %s | %s |", fault, message, words(before), words(during), words(after)));
    }

    private static String words(OutboxCounts c) {
        return c.waiting() + "/" + c.parked() + "/" + c.sent();
    }

    synchronized void print(String title) {
        System.out.println("== " + title + ": " + lines.size() + " faults survived; spool as waiting/refused/sent");
        System.out.println("| fault | the person sees | before | during | after |");
        System.out.println("| --- | --- | --- | --- | --- |");
        lines.forEach(System.out::println);
    }
}
