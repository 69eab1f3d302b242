package org.docksweep.kiosk.dock;

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

    /** Something was recorded and can be sent. */
    void hurry();
}
