package org.docksweep.kiosk.screens;

import java.util.List;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import org.docksweep.kiosk.teaching.TeachingState;
import org.docksweep.suspect.TeachingProgress.Grade;

/** Right quarter of the fleet page: what is going on, what is asked, and the keys that are alive. */
final class FleetColumn extends JPanel {
    private static final long serialVersionUID = 1;

    private final VerdictPlate plate;
    private final FleetNotes notes;
    private final KeyPad keys;

    FleetColumn(Sizes sizes, Texts texts) {
        super(new MigLayout(
                "insets 0, gap 0, fill, hidemode 3", "[grow,fill]", "[" + sizes.px(104) + "px!][grow,fill][]"));
        setOpaque(false);
        plate = new VerdictPlate(sizes, texts);
        notes = new FleetNotes(sizes, texts);
        keys = new KeyPad(sizes);
        add(plate, "wrap, grow");
        add(notes, "wrap, grow, hmin 0, gaptop " + sizes.px(8) + "px");
        add(keys, "grow, gaptop " + sizes.px(8) + "px");
    }

    void show(TeachingState state, List<Offer> offers) {
        plate.show(guide(state));
        notes.show(state);
        keys.show(offers);
    }

    private static Guide guide(TeachingState state) {
        if (state.sweepShare().isPresent()) {
            return new Guide(Tone.NEUTRAL, Sign.WAVE, "word.SWEEP", List.of());
        }
        if (state.busy()) {
            return new Guide(Tone.NEUTRAL, Sign.WAVE, "fleet.word.WORKING", List.of());
        }
        return switch (state.activity()) {
            case MODELS -> new Guide(Tone.NEUTRAL, Sign.LABEL, "fleet.word.MODELS", List.of());
            case DRAWING -> new Guide(Tone.ACT, Sign.EYE, "fleet.word.DRAWING", List.of());
            case SIGN_ON -> new Guide(Tone.ACT, Sign.HAND, "fleet.word.SIGN_ON", List.of());
            case UNITS -> {
                TeachingState.LessonAtHand lesson = state.lesson().orElseThrow();
                if (lesson.contacts().isPresent()) {
                    yield new Guide(Tone.ACT, Sign.PLUG, "word.PLUG_IN", List.of());
                }
                Grade grade =
                        lesson.progress().map(TeachingState.Progress::grade).orElse(Grade.HARD_FAULTS);
                if (lesson.units().isEmpty()) {
                    yield new Guide(Tone.ACT, Sign.CODE, "fleet.word.UNITS", List.of());
                }
                yield switch (grade) {
                    case GOOD -> new Guide(Tone.PASS, Sign.TICK, "fleet.word.GOOD", List.of());
                    case HARD_FAULTS -> new Guide(Tone.ACT, Sign.CODE, "fleet.word.MORE", List.of());
                    case WRONG_DRAWING ->
                        new Guide(Tone.ATTENTION, Sign.EXCLAMATION, "fleet.word.WRONG_DRAWING", List.of());
                };
            }
        };
    }
}
