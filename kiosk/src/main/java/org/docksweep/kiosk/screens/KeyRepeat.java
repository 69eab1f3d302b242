package org.docksweep.kiosk.screens;

import java.awt.event.KeyEvent;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/**
 * Tells a key held down from a key pressed again, so that a glove resting on a key does not walk through the phases.
 * Some systems send only presses while a key is held, others a release and a press at the same instant.
 */
final class KeyRepeat {
    private final Set<Integer> down = new HashSet<>();
    private final Map<Integer, Long> releasedAtMs = new HashMap<>();

    /**
     * Notes an event of a key.
     *
     * @return true if it is a press that begins, false for releases and repeats
     */
    boolean begins(KeyEvent event) {
        int code = event.getKeyCode();
        if (event.getID() == KeyEvent.KEY_RELEASED) {
            down.remove(code);
            releasedAtMs.put(code, event.getWhen());
            return false;
        }
        Long released = releasedAtMs.get(code);
        boolean held = !down.add(code);
        return !held && (released == null || event.getWhen() > released);
    }

    /** Forgets keys held, because their releases may go to another window. */
    void forget() {
        down.clear();
    }
}
