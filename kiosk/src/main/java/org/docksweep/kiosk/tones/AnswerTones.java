package org.docksweep.kiosk.tones;

import java.util.Objects;
import java.util.function.BooleanSupplier;
import org.docksweep.kiosk.dock.DockListener;
import org.docksweep.kiosk.dock.DockState;
import org.docksweep.kiosk.dock.DockState.Phase;

/** Sounds each answer once, and is silent before the next sweep: a microphone would hear it. */
public final class AnswerTones implements DockListener {
    private final Loudspeaker loudspeaker;
    private final BooleanSupplier allowed;
    private String last;

    /**
     * Makes the listener.
     *
     * @param loudspeaker where tones are heard
     * @param allowed asked before each tone: not while the rig plays through the same output, where an amplifier and a
     *     cabinet would hear it
     */
    public AnswerTones(Loudspeaker loudspeaker, BooleanSupplier allowed) {
        this.loudspeaker = loudspeaker;
        this.allowed = allowed;
    }

    @Override
    public void changed(DockState state) {
        if (state.phase() == Phase.ANSWER) {
            DockState.Answer answer = state.answer().orElseThrow();
            String said = state.cabinet().map(c -> c.tag().value()).orElse("") + answer.route() + answer.prompt();
            if (!Objects.equals(said, last) && allowed.getAsBoolean()) {
                loudspeaker.play(AnswerTone.of(answer));
            }
            last = said;
            return;
        }
        last = null;
        if (state.phase() != Phase.READY && state.phase() != Phase.LOOK) {
            loudspeaker.silence();
        }
    }
}
