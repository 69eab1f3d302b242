package org.docksweep.kiosk.night;

import java.awt.AWTException;
import java.awt.event.KeyEvent;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.function.Consumer;
import org.docksweep.kiosk.bench.BenchActions;
import org.docksweep.kiosk.bench.BenchStep;
import org.docksweep.kiosk.printing.PaperView;

/** Works the bench page as a person does: scans are typed, every step is the key that is painted on its button. */
final class BenchFingers implements BenchActions {
    private static final ResourceBundle LABELS =
            ResourceBundle.getBundle("org.docksweep.kiosk.screens.screens", Locale.ENGLISH);

    private final WindowReader window;
    private final Consumer<String> before;
    private final Keyboard keyboard;

    /**
     * Makes fingers.
     *
     * @param window where they read
     * @param before hears of every step before its key is pressed
     */
    BenchFingers(WindowReader window, Consumer<String> before) throws AWTException {
        this.window = window;
        this.before = before;
        this.keyboard = new Keyboard();
    }

    @Override
    public void refresh() {
        keyboard.pressCap(window.awaitButton(LABELS.getString("page.BENCH")));
    }

    @Override
    public void scan(String text) {
        keyboard.type(text);
    }

    @Override
    public void mark(int index) {
        for (int i = 0; i < index; i++) {
            keyboard.press(KeyEvent.VK_DOWN);
        }
    }

    @Override
    public void step(BenchStep step) {
        String cap = window.awaitButton(LABELS.getString("bench.step." + step));
        before.accept(step.name());
        keyboard.pressCap(cap);
        if (step == BenchStep.PRINT_CARD) {
            keyboard.pressCap(window.awaitButton(LABELS.getString("paper.PRINT")));
        }
    }

    @Override
    public void viewCard(Consumer<PaperView> shown) {
        throw new UnsupportedOperationException("what is shown stays on the window");
    }

    @Override
    public void choose(String code) {
        keyboard.type(code);
    }

    @Override
    public void stop() {
        keyboard.press(KeyEvent.VK_ESCAPE);
    }
}
