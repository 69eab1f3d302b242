package org.docksweep.kiosk.dock;

import java.util.Optional;
import org.docksweep.kiosk.spool.Trouble;

/** What the dock needs to know of the way to the service. */
public interface Link {
    /** No service at all. */
    Link NONE = new Link() {
        @Override
        public boolean reachable() {
            return false;
        }

        @Override
        public void hurry() {
            // Nobody to hurry.
        }
    };

    /**
     * Whether the service answered last time.
     *
     * @return true if so
     */
    boolean reachable();

    /**
     * What kept the last record from being sent.
     *
     * @return empty when it was sent, and before the first attempt
     */
    default Optional<Trouble> trouble() {
        return reachable() ? Optional.empty() : Optional.of(Trouble.UNREACHABLE);
    }

    /** Something was recorded and can be sent. */
    void hurry();
}
