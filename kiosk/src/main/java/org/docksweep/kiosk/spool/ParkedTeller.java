package org.docksweep.kiosk.spool;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;

/**
 * Tells a person of every record the service has refused for good, once each: nothing is set aside in silence. Runs in the
 * sender's thread, as its change hook.
 */
public final class ParkedTeller implements Runnable {
    private final Spool spool;
    private final Set<Long> told = new HashSet<>();
    private Consumer<String> person = words -> {};
    private boolean listening;

    /**
     * Makes a teller; until {@link #tell} names somebody, refusals wait.
     *
     * @param spool spool whose refused records are told of
     */
    public ParkedTeller(Spool spool) {
        this.spool = spool;
    }

    /**
     * Names who is told from now on, of refusals so far as well.
     *
     * @param listener hears the service's words; must return at once
     */
    public synchronized void tell(Consumer<String> listener) {
        person = listener;
        listening = true;
        run();
    }

    @Override
    public synchronized void run() {
        if (!listening) {
            return;
        }
        List<ParkedItem> all = spool.outbox().counts().parked() == 0
                ? List.of()
                : spool.outbox().parked();
        // What was tried again and refused again is told again.
        told.retainAll(all.stream().map(p -> p.item().sequence()).toList());
        for (ParkedItem parked : all) {
            if (told.add(parked.item().sequence())) {
                person.accept(parked.words());
            }
        }
    }
}
