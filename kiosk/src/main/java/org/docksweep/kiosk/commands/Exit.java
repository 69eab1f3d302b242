package org.docksweep.kiosk.commands;

import java.util.concurrent.CompletableFuture;

/** Where somebody wants to go when a window is left. */
final class Exit {
    private final CompletableFuture<To> where = new CompletableFuture<>();

    /** Where to. */
    enum To {
        CLOSE,
        WORK,
        SET_UP,
        PRACTICE
    }

    /** The first wish counts. */
    void to(To next) {
        where.complete(next);
    }

    /** Waits until somebody wants to go, and closes the window then. */
    To await(Stand stand) throws InterruptedException {
        stand.whenClosed(() -> to(To.CLOSE));
        To next = await();
        stand.close();
        return next;
    }

    To await() throws InterruptedException {
        try {
            return where.get();
        } catch (java.util.concurrent.ExecutionException e) {
            throw new IllegalStateException("nobody completes this exceptionally", e);
        }
    }
}
