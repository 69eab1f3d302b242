package org.docksweep.kiosk.night;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.AWTException;
import java.awt.event.KeyEvent;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import org.docksweep.fleet.VisualItem;
import org.docksweep.kiosk.dock.DockActions;
import org.docksweep.kiosk.dock.DockState.NoticeAction;
import org.docksweep.kiosk.printing.PaperView;

/**
 * Works the window as a person does: scans are typed and end with Enter, and every step is the key that is painted on
 * its button. A step without a button on the window cannot be taken.
 */
final class TypingFingers implements DockActions {
    private static final ResourceBundle LABELS =
            ResourceBundle.getBundle("org.docksweep.kiosk.screens.screens", Locale.ENGLISH);

    private final WindowReader window;
    private final Consumer<String> saw;
    private final Keyboard keyboard;

    /**
     * Makes fingers.
     *
     * @param window where they read
     * @param saw hears the word on the window before each answer to a prompt
     */
    TypingFingers(WindowReader window, Consumer<String> saw) throws AWTException {
        this.window = window;
        this.saw = saw;
        keyboard = new Keyboard();
    }

    @Override
    public void scan(String text) {
        keyboard.type(text);
    }

    @Override
    public void lookedOver(Set<VisualItem> damage) {
        assertThat(window.word()).isEqualTo("LOOK");
        for (VisualItem item : new TreeSet<>(damage)) {
            String name = LABELS.getString("item." + item);
            pressButton(name + ": " + LABELS.getString("item.fine"));
            window.awaitButton(name + ": " + LABELS.getString("item.not-fine"));
        }
        pressButton(damage.isEmpty() ? LABELS.getString("button.ALL_FINE") : "GO ON, ");
    }

    @Override
    public void plugged() {
        saw.accept(window.word());
        pressButton(LABELS.getString("button.PLUGGED"));
    }

    @Override
    public void stop() {
        keyboard.press(KeyEvent.VK_ESCAPE);
    }

    @Override
    public void sweepAgain() {
        saw.accept(window.word());
        pressButton(LABELS.getString("button.SWEEP_AGAIN"));
    }

    @Override
    public void holdForPerson() {
        saw.accept(window.word());
        pressButton(LABELS.getString("button.HOLD"));
    }

    @Override
    public void printTag() {
        pressButton(LABELS.getString("button.PRINT"));
        pressButton(LABELS.getString("paper.PRINT"));
    }

    @Override
    public void viewTag(Consumer<PaperView> shown) {
        throw new UnsupportedOperationException("what is shown stays on the window");
    }

    @Override
    public void viewSheet(Consumer<PaperView> shown) {
        throw new UnsupportedOperationException("what is shown stays on the window");
    }

    @Override
    public void notice(NoticeAction action) {
        pressButton(LABELS.getString("notice." + action));
    }

    @Override
    public void register(String modelCode) {
        throw new UnsupportedOperationException("nobody registers a cabinet in this night");
    }

    @Override
    public void closeList() {
        pressButton(LABELS.getString("button.CLOSE_LIST"));
        window.awaitButton("Close: ");
        pressButton("Close: ");
    }

    private void pressButton(String label) {
        keyboard.pressCap(window.awaitButton(label));
    }
}
