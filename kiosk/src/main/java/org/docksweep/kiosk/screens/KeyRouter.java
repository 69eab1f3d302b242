package org.docksweep.kiosk.screens;

import java.awt.Component;
import java.awt.KeyEventDispatcher;
import java.awt.KeyboardFocusManager;
import java.awt.event.KeyEvent;
import java.util.Optional;
import javax.swing.JComponent;
import javax.swing.SwingUtilities;

/**
 * Sends command keys to the page and everything else that is typed in the window to its scan line or entry, whatever was
 * clicked before.
 */
final class KeyRouter implements KeyEventDispatcher {
    private final KeyHome pane;
    private final Component inside;
    private final KeyRepeat repeat = new KeyRepeat();

    <P extends JComponent & KeyHome> KeyRouter(P pane) {
        this.pane = pane;
        this.inside = pane;
    }

    @Override
    public boolean dispatchKeyEvent(KeyEvent event) {
        Component source = event.getComponent();
        if (source == null || SwingUtilities.getRoot(source) != SwingUtilities.getRoot(inside)) {
            return false;
        }
        pane.touched();
        Optional<Command> command = event.getID() == KeyEvent.KEY_TYPED ? Optional.empty() : Command.of(event);
        if (command.isPresent()) {
            if (repeat.begins(event)) {
                pane.perform(command.get());
            }
            return true;
        }
        if (event.getID() == KeyEvent.KEY_PRESSED && event.getKeyCode() == KeyEvent.VK_ENTER && pane.badgeEntered()) {
            return true;
        }
        if (source != pane.keyTarget()) {
            KeyboardFocusManager.getCurrentKeyboardFocusManager().redispatchEvent(pane.keyTarget(), event);
            return true;
        }
        return false;
    }

    void windowLeft() {
        repeat.forget();
    }
}
