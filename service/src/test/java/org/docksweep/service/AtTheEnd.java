package org.docksweep.service;

import java.util.ArrayDeque;
import java.util.Deque;

/** What is to be stopped when this virtual machine ends: last started, first stopped. */
final class AtTheEnd {
    private static final Deque<Runnable> STOPS = new ArrayDeque<>();

    private AtTheEnd() {}

    static synchronized void stop(Runnable stop) {
        if (STOPS.isEmpty()) {
            Runtime.getRuntime().addShutdownHook(new Thread(AtTheEnd::stopAll, "at-the-end"));
        }
        STOPS.push(stop);
    }

    private static synchronized void stopAll() {
        STOPS.forEach(Runnable::run);
    }
}
