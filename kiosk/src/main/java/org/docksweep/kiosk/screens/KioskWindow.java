package org.docksweep.kiosk.screens;

import java.awt.AWTEvent;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.GraphicsEnvironment;
import java.awt.Image;
import java.awt.KeyboardFocusManager;
import java.awt.Rectangle;
import java.awt.event.AWTEventListener;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicReference;
import javax.swing.JComponent;
import javax.swing.JFrame;
import javax.swing.SwingUtilities;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.kiosk.dock.DockActions;
import org.docksweep.kiosk.dock.DockState;

/** The window at the dock. Made on the event thread; {@link #show(DockState)} may be called from any thread. */
public final class KioskWindow extends JFrame {
    private static final long serialVersionUID = 1;
    private static final int WIDTH = 1280;
    private static final int HEIGHT = 800;

    private final WindowPane pane;
    private final transient KeyRouter router;
    private final transient AtomicReference<DockState> waiting = new AtomicReference<>();
    private final transient CountDownLatch painted = new CountDownLatch(1);

    private KioskWindow(
            DockActions actions,
            DockState initial,
            List<CabinetModel> models,
            ScreenSettings settings,
            List<PageMaker> others,
            Around around) {
        super("Docksweep");
        Sizes sizes = new Sizes(settings.scale());
        Texts texts = new Texts(settings.locale(), settings.zone());
        KioskPane dock = new KioskPane(actions, initial, models, sizes, texts);
        List<Page> pages =
                others.stream().map(maker -> maker.make(sizes, texts)).toList();
        pane = new WindowPane(actions, dock, pages, initial, sizes, texts, around);
        router = new KeyRouter(pane);
        dress(this, pane, sizes);
        addWindowListener(new Focus());
        addWindowFocusListener(new Focus());
        around.people().ifPresent(people -> {
            people.addListener(state -> SwingUtilities.invokeLater(() -> pane.show(people.state())));
            AWTEventListener touches = event -> people.touched();
            getToolkit().addAWTEventListener(touches, AWTEvent.MOUSE_EVENT_MASK);
            addWindowListener(new WindowAdapter() {
                @Override
                public void windowClosed(WindowEvent event) {
                    getToolkit().removeAWTEventListener(touches);
                }
            });
        });
    }

    /**
     * Opens a window with the dock page alone.
     *
     * @param actions hears what the person does, on the event thread
     * @param initial first state
     * @param models all models of the house, for registering an unknown cabinet
     * @param settings theme, scale, language, time zone
     * @return the open window
     * @throws IllegalStateException if called off the event thread, or on a machine without a display
     */
    public static KioskWindow open(
            DockActions actions, DockState initial, List<CabinetModel> models, ScreenSettings settings) {
        return open(actions, initial, models, settings, List.of());
    }

    /**
     * Opens the window: on a screen of its design size or less it fills the screen.
     *
     * @param actions hears what the person does, on the event thread
     * @param initial first state
     * @param models all models of the house, for registering an unknown cabinet
     * @param settings theme, scale, language, time zone
     * @param others pages besides the dock page
     * @return the open window; closing it disposes it, and a window listener hears of that
     * @throws IllegalStateException if called off the event thread, or on a machine without a display
     */
    public static KioskWindow open(
            DockActions actions,
            DockState initial,
            List<CabinetModel> models,
            ScreenSettings settings,
            List<PageMaker> others) {
        return open(actions, initial, models, settings, others, Around.NONE);
    }

    /**
     * Opens the window with more than pages.
     *
     * @param actions hears what the person does, on the event thread
     * @param initial first state
     * @param models all models of the house, for registering an unknown cabinet
     * @param settings theme, scale, language, time zone
     * @param others pages besides the dock page
     * @param around what belongs to no page
     * @return the open window; closing it disposes it, and a window listener hears of that
     * @throws IllegalStateException if called off the event thread, or on a machine without a display
     */
    public static KioskWindow open(
            DockActions actions,
            DockState initial,
            List<CabinetModel> models,
            ScreenSettings settings,
            List<PageMaker> others,
            Around around) {
        needsDisplayAndEventThread();
        Look.install(settings);
        KioskWindow window = new KioskWindow(actions, initial, models, settings, others, around);
        KeyboardFocusManager.getCurrentKeyboardFocusManager().addKeyEventDispatcher(window.router);
        showFitting(window);
        window.pane.keyTarget().requestFocusInWindow();
        return window;
    }

    /**
     * Makes the look and the fonts ready while something else is being loaded; the window opens sooner then. From any thread, returns at
     * once.
     *
     * @param settings theme, scale, language
     */
    public static void prepare(ScreenSettings settings) {
        SwingUtilities.invokeLater(() -> {
            Look.install(settings);
            Sizes sizes = new Sizes(settings.scale());
            Ink.width("Docksweep 0", sizes.regular(16));
            Ink.width("Docksweep 0", sizes.semiBold(16));
            Ink.width("Docksweep 0", sizes.bold(16));
            // Widgets are looked up by name, and each brings classes of its own.
            new AskPane(sizes, new Texts(settings.locale(), settings.zone()), ignored -> {});
        });
    }

    /** What every window of the kiosk has. */
    static void dress(JFrame window, JComponent pane, Sizes sizes) {
        pane.setPreferredSize(new Dimension(sizes.px(WIDTH), sizes.px(HEIGHT)));
        window.setContentPane(pane);
        window.setIconImage(icon());
        window.setDefaultCloseOperation(DISPOSE_ON_CLOSE);
    }

    static void needsDisplayAndEventThread() {
        if (!SwingUtilities.isEventDispatchThread()) {
            throw new IllegalStateException(
                    "the kiosk window must be opened on the event thread; call it through SwingUtilities.invokeLater");
        }
        if (GraphicsEnvironment.isHeadless()) {
            throw new IllegalStateException(
                    "there is no display for the kiosk window; run the dock night without a window instead");
        }
    }

    /** On a screen of its design size or less a window fills the screen. */
    static void showFitting(JFrame window) {
        window.pack();
        Rectangle screen = GraphicsEnvironment.getLocalGraphicsEnvironment().getMaximumWindowBounds();
        if (window.getWidth() >= screen.width || window.getHeight() >= screen.height) {
            window.setBounds(screen);
            window.setExtendedState(MAXIMIZED_BOTH);
        } else {
            window.setLocationRelativeTo(null);
        }
        window.setVisible(true);
    }

    private static Image icon() {
        int size = 64;
        BufferedImage image = new BufferedImage(size, size, BufferedImage.TYPE_INT_ARGB);
        Graphics2D g = image.createGraphics();
        PaintedPanel.smooth(g);
        Sign.WAVE.paint(g, 0, 0, size, Tone.ACT.plate(), Tone.ACT.onPlate());
        g.dispose();
        return image;
    }

    /**
     * Shows a state. May be called from any thread and returns at once; of states that arrive faster than the screen
     * paints only the newest is shown.
     *
     * @param state the state
     */
    public void show(DockState state) {
        if (waiting.getAndSet(state) == null) {
            SwingUtilities.invokeLater(() -> pane.show(waiting.getAndSet(null)));
        }
    }

    @Override
    public void paint(Graphics g) {
        super.paint(g);
        getToolkit().sync();
        painted.countDown();
    }

    /**
     * Waits until the window has painted itself for the first time. Not for the event thread.
     *
     * @throws InterruptedException if stopped
     */
    public void awaitPainted() throws InterruptedException {
        painted.await();
    }

    /** Keeps the focus where typed text belongs while the window lives. */
    private final class Focus extends WindowAdapter {
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
            KeyboardFocusManager.getCurrentKeyboardFocusManager().removeKeyEventDispatcher(router);
        }
    }
}
