package org.docksweep.kiosk.screens;

import java.util.List;
import java.util.Optional;
import javax.swing.JFrame;

/** A window that says one thing while something is being made ready. Lives on the event thread. */
public final class NoteWindow extends JFrame {
    private static final long serialVersionUID = 1;

    private NoteWindow(ScreenSettings settings, String word, String sentence) {
        super("Docksweep");
        Sizes sizes = new Sizes(settings.scale());
        Texts texts = new Texts(settings.locale(), settings.zone());
        AskPane pane = new AskPane(sizes, texts, ignored -> {});
        pane.show(new Asked(
                new Guide(Tone.NEUTRAL, Sign.WAVE, word, List.of()),
                texts.say(sentence),
                List.of(),
                Optional.empty(),
                List.of(),
                "",
                false));
        KioskWindow.dress(this, pane, sizes);
        setDefaultCloseOperation(DO_NOTHING_ON_CLOSE);
    }

    /**
     * Opens the window.
     *
     * @param settings theme, scale, language
     * @param word key of the large word
     * @param sentence key of the sentence
     * @return the open window, to be disposed by whoever opened it
     */
    public static NoteWindow open(ScreenSettings settings, String word, String sentence) {
        KioskWindow.needsDisplayAndEventThread();
        Look.install(settings);
        NoteWindow window = new NoteWindow(settings, word, sentence);
        KioskWindow.showFitting(window);
        return window;
    }
}
