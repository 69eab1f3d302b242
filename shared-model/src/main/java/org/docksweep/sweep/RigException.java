package org.docksweep.sweep;

import java.util.Objects;
import org.docksweep.fleet.Reason;

/** A measurement could not be made. Carries a sentence for the dock hand. */
public class RigException extends Exception {
    private static final long serialVersionUID = 1L;

    /** Why it could not be made. */
    public enum Cause {
        /** Somebody pressed stop. */
        STOPPED,
        /** The audio device went away or gave fewer samples than asked. */
        DEVICE_LOST,
        /** The rig refused: nothing to play to, wrong settings. */
        REFUSED
    }

    private final Cause kind;
    private final transient Reason reason;

    /**
     * Makes the exception.
     *
     * @param kind why
     * @param reason sentence for people
     */
    public RigException(Cause kind, Reason reason) {
        super(kind + ": " + reason);
        this.kind = Objects.requireNonNull(kind);
        this.reason = Objects.requireNonNull(reason);
    }

    /**
     * Why.
     *
     * @return the cause
     */
    public Cause kind() {
        return kind;
    }

    /**
     * The sentence for people.
     *
     * @return the reason
     */
    public Reason reason() {
        return reason;
    }
}
