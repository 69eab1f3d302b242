package org.docksweep.kiosk.screens;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import java.awt.AWTException;
import java.awt.Component;
import java.awt.Container;
import java.awt.KeyboardFocusManager;
import java.awt.Point;
import java.awt.Robot;
import java.awt.event.ContainerAdapter;
import java.awt.event.ContainerEvent;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;
import org.docksweep.fleet.Reason;
import org.docksweep.kiosk.dock.DockState;
import org.docksweep.kiosk.dock.DockState.Phase;
import org.docksweep.kiosk.dock.DockState.TagPrint;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The real window on a real (or virtual) display, driven by typed keys and clicks. */
class KioskWindowIT {
    private static final long LONGEST_WAIT_MS = 10_000;

    private final RecordedActions actions = new RecordedActions();
    private Robot robot;
    private KioskWindow window;

    @BeforeEach
    void needsADisplay() throws AWTException {
        Display.need();
        robot = new Robot();
        robot.setAutoDelay(5);
    }

    @AfterEach
    void closes() {
        if (window != null) {
            GalleryPane.onEventThread(window::dispose);
        }
    }

    private void open(String state, double scale) {
        GalleryPane.onEventThread(() -> window = KioskWindow.open(
                actions,
                spoken(SampleStates.named(state)),
                SampleHouse.MODELS,
                new ScreenSettings(Theme.DARK, scale, Locale.ENGLISH, GalleryPane.ZONE)));
        await("the scan line has the focus", this::scanLineHasFocus);
    }

    /** The window says the gate's real sentences only, so the samples' own are replaced. */
    private static DockState spoken(DockState s) {
        return new DockState(
                s.phase(),
                s.strip(),
                s.returns(),
                s.scans(),
                s.notice(),
                s.cabinet()
                        .map(c -> new DockState.CabinetAtHand(
                                c.tag(), c.model(), c.shelfPlace(), List.of(), List.of(), c.queuedScan())),
                s.visualDamage(),
                s.curve(),
                s.progress(),
                s.answer()
                        .map(a -> new DockState.Answer(
                                a.verdict(),
                                a.prompt(),
                                a.route(),
                                a.place(),
                                a.watch(),
                                Reason.of("dock-rig-passed", "21:10"),
                                List.of(),
                                a.jobCode(),
                                TagPrint.NOT_NEEDED)));
    }

    private boolean scanLineHasFocus() {
        return KeyboardFocusManager.getCurrentKeyboardFocusManager().getFocusOwner() instanceof ScanField;
    }

    private static void await(String what, Supplier<Boolean> condition) {
        long end = System.currentTimeMillis() + LONGEST_WAIT_MS;
        AtomicReference<Boolean> met = new AtomicReference<>(false);
        while (!met.get() && System.currentTimeMillis() < end) {
            GalleryPane.onEventThread(() -> met.set(condition.get()));
        }
        assertThat(met.get()).as(what).isTrue();
    }

    private void type(String text) {
        for (char c : text.toCharArray()) {
            boolean shift = Character.isUpperCase(c);
            if (shift) {
                robot.keyPress(KeyEvent.VK_SHIFT);
            }
            press(KeyEvent.getExtendedKeyCodeForChar(Character.toLowerCase(c)));
            if (shift) {
                robot.keyRelease(KeyEvent.VK_SHIFT);
            }
        }
    }

    private void press(int keyCode) {
        robot.keyPress(keyCode);
        robot.keyRelease(keyCode);
    }

    private void scan(String text) {
        type(text);
        press(KeyEvent.VK_ENTER);
    }

    private static Point centre(Component component) {
        AtomicReference<Point> at = new AtomicReference<>();
        GalleryPane.onEventThread(() -> {
            Point corner = component.getLocationOnScreen();
            at.set(new Point(corner.x + component.getWidth() / 2, corner.y + component.getHeight() / 2));
        });
        return at.get();
    }

    private void click(Component component) {
        Point at = centre(component);
        robot.mouseMove(at.x, at.y);
        robot.mousePress(InputEvent.BUTTON1_DOWN_MASK);
        robot.mouseRelease(InputEvent.BUTTON1_DOWN_MASK);
        robot.waitForIdle();
    }

    private <T extends Component> List<T> visible(Class<T> type) {
        List<T> found = new ArrayList<>();
        GalleryPane.onEventThread(() -> collect(window.getContentPane(), type, found));
        return found;
    }

    private static <T extends Component> void collect(Container container, Class<T> type, List<T> found) {
        for (Component child : container.getComponents()) {
            if (child.isShowing() && type.isInstance(child)) {
                found.add(type.cast(child));
            }
            if (child instanceof Container inner) {
                collect(inner, type, found);
            }
        }
    }

    @Test
    void handsOverATypedScan() throws InterruptedException {
        open("ready", 1);

        scan("MCH-000117");

        assertThat(actions.next()).isEqualTo("scan MCH-000117");
    }

    @Test
    void keepsTheFocusOnTheScanLineWhateverIsClicked() throws InterruptedException {
        open("answer-pass", 1);
        for (PaintedPanel panel : visible(PaintedPanel.class)) {
            click(panel);
            assertThat(scanLineHasFocus())
                    .as("after a click on " + panel.getClass())
                    .isTrue();
        }

        scan("MCH-000118");

        assertThat(actions.next()).isEqualTo("scan MCH-000118");
        assertThat(actions.quiet()).isTrue();
    }

    @Test
    void sendsAScanToTheLineAfterAButtonWasClicked() throws InterruptedException {
        open("look", 1);
        KeyButton allFine = visible(KeyButton.class).stream()
                .filter(b -> b.offer().command() == Command.NEXT)
                .findFirst()
                .orElseThrow();
        click(allFine);
        assertThat(actions.next()).isEqualTo("lookedOver []");

        scan("MCH-000119 ");

        assertThat(actions.next()).isEqualTo("scan MCH-000119 ");
    }

    @Test
    void stopsOnEscapeAndLosesNoScanDuringASweep() throws InterruptedException {
        open("sweep", 1);

        type("MCH-00");
        window.show(spoken(SampleStates.named("sweep-queued")));
        type("0118");
        press(KeyEvent.VK_ENTER);
        assertThat(actions.next()).isEqualTo("scan MCH-000118");
        press(KeyEvent.VK_ESCAPE);

        assertThat(actions.next()).isEqualTo("stop");
        assertThat(actions.quiet()).isTrue();
    }

    @Test
    void stopsByTouchWhileStatesStreamIn() throws InterruptedException {
        open("sweep", 1);
        KeyButton stop = visible(KeyButton.class).stream()
                .filter(b -> b.offer().command() == Command.STOP)
                .findFirst()
                .orElseThrow();
        AtomicInteger takenOut = new AtomicInteger();
        stop.getParent().addContainerListener(new ContainerAdapter() {
            @Override
            public void componentRemoved(ContainerEvent event) {
                takenOut.incrementAndGet();
            }
        });
        Point at = centre(stop);
        robot.mouseMove(at.x, at.y);
        robot.mousePress(InputEvent.BUTTON1_DOWN_MASK);
        robot.waitForIdle();
        window.show(spoken(SampleStates.named("sweep-queued")));
        await("the newer state", () -> showsQueuedScan());
        robot.mouseRelease(InputEvent.BUTTON1_DOWN_MASK);

        assertThat(actions.next()).isEqualTo("stop");
        assertThat(takenOut)
                .as("buttons taken out under the finger, which may lose its release")
                .hasValue(0);
    }

    private boolean showsQueuedScan() {
        return visible(NoticePanel.class).stream()
                .flatMap(panel -> List.of(panel.getComponents()).stream())
                .anyMatch(c -> c.getAccessibleContext().getAccessibleName().contains("MCH-000118"));
    }

    @Test
    void obeysTheKeysOnItsButtons() throws InterruptedException {
        open("look", 1);
        press(KeyEvent.VK_F5);
        press(KeyEvent.VK_F1);
        assertThat(actions.next()).isEqualTo("lookedOver [RIGGING]");

        window.show(spoken(SampleStates.named("plug")));
        await("the plug page", () -> !visible(PlugPanel.class).isEmpty());
        press(KeyEvent.VK_F10);
        assertThat(actions.next()).isEqualTo("holdForPerson");
        press(KeyEvent.VK_F1);
        assertThat(actions.next()).isEqualTo("plugged");
    }

    @Test
    void registersAnUnknownCabinetByKeys() throws InterruptedException {
        open("unknown-tag", 1);

        press(KeyEvent.VK_F11);
        press(KeyEvent.VK_F4);

        assertThat(actions.next()).isEqualTo("register UNDR215");
    }

    @Test
    void fillsItsWindowAtTwiceTheSize() throws InterruptedException {
        open("answer-pass", 2);
        List<VerdictPlate> plate = visible(VerdictPlate.class);
        assertThat(plate).hasSize(1);
        assertThat(plate.get(0).getHeight()).isEqualTo(320);

        scan("MCH-000120");

        assertThat(actions.next()).isEqualTo("scan MCH-000120");
    }

    @Test
    void showsTheNewestOfStatesFromAnyThread() throws InterruptedException {
        open("ready", 1);
        DockState last = spoken(SampleStates.named("answer-pass"));
        Thread dock = new Thread(() -> {
            for (String name : SampleStates.all().keySet()) {
                window.show(spoken(SampleStates.named(name)));
            }
            window.show(last);
        });
        dock.start();
        dock.join();

        await(
                "the last state",
                () -> visible(VerdictPlate.class)
                        .get(0)
                        .getAccessibleContext()
                        .getAccessibleName()
                        .equals("PASS"));
        assertThat(last.phase()).isEqualTo(Phase.ANSWER);
    }

    @Test
    void refusesToOpenOffTheEventThread() {
        assertThatIllegalStateException()
                .isThrownBy(() -> KioskWindow.open(
                        actions,
                        SampleStates.named("ready"),
                        SampleHouse.MODELS,
                        new ScreenSettings(Theme.DARK, 1, Locale.ENGLISH, GalleryPane.ZONE)))
                .withMessageContaining("event thread");
    }
}
