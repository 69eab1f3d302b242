package org.docksweep.kiosk.screens;

import java.awt.KeyboardFocusManager;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import javax.swing.JFrame;
import javax.swing.SwingUtilities;
import org.docksweep.kiosk.setup.SetUpDesk;

/** The window of the set-up walk. Lives on the event thread. */
public final class SetUpWindow extends JFrame {
    private static final long serialVersionUID = 1;

    private SetUpWindow(SetUpDesk desk, Sizes sizes) {
        super("Docksweep");
        SetUpPane pane = new SetUpPane(desk, desk.state(), sizes);
        desk.addListener(state -> SwingUtilities.invokeLater(() -> pane.show(desk.state())));
        KeyRouter router = new KeyRouter(pane);
        KeyboardFocusManager keys = KeyboardFocusManager.getCurrentKeyboardFocusManager();
        keys.addKeyEventDispatcher(router);
        KioskWindow.dress(this, pane, sizes);
        WindowAdapter focus = new WindowAdapter() {
            @Override
            public void windowGainedFocus(WindowEvent event) {
                pane.keyTarget().requestFocusInWindow();
            }

            @Override
            public void windowLostFocus(WindowEvent event) {
                router.windowLeft();
            }

            @Override
            public void windowClosed(WindowEvent event) {
                keys.removeKeyEventDispatcher(router);
            }
        };
        addWindowListener(focus);
        addWindowFocusListener(focus);
    }

    /**
     * Opens the window.
     *
     * @param desk the walk; closed by whoever made it
     * @param settings theme and scale; the language is the walk's own
     * @return the open window; closing it disposes it, and a window listener hears of that
     */
    public static SetUpWindow open(SetUpDesk desk, ScreenSettings settings) {
        KioskWindow.needsDisplayAndEventThread();
        Look.install(settings);
        SetUpWindow window = new SetUpWindow(desk, new Sizes(settings.scale()));
        KioskWindow.showFitting(window);
        return window;
    }
}
