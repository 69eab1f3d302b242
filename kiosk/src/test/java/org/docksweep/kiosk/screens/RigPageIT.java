package org.docksweep.kiosk.screens;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.AWTException;
import java.awt.KeyboardFocusManager;
import java.awt.Robot;
import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.rig.LevelSource;
import org.docksweep.kiosk.rig.RigBook;
import org.docksweep.kiosk.rig.RigDesk;
import org.docksweep.kiosk.rig.RigDeskParts;
import org.docksweep.kiosk.rig.RigDeskState;
import org.docksweep.kiosk.rig.RigDeskState.Mode;
import org.docksweep.kiosk.rig.RigEntry;
import org.docksweep.kiosk.rig.RigSetUp;
import org.docksweep.kiosk.rig.RigStandings;
import org.docksweep.kiosk.rig.Rigs;
import org.docksweep.kiosk.rig.StandardSet;
import org.docksweep.kiosk.rig.StandardsHand;
import org.docksweep.kiosk.rig.StudyCabinet;
import org.docksweep.kiosk.rig.WalkStep;
import org.docksweep.sweep.PracticeRig;
import org.docksweep.sweep.RigException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The rig page in the real window, with the virtual rig, worked by nothing but typed keys. */
class RigPageIT {
    private static final long LONGEST_WAIT_MS = 60_000;

    @TempDir
    private Path folder;

    private final RecordedActions dock = new RecordedActions();
    private final Deque<WalkStep> wrongPlugs = new ArrayDeque<>();
    private Robot robot;
    private PracticeRig rig;
    private RigBook book;
    private RigDesk desk;
    private KioskWindow window;

    @BeforeEach
    void opens() throws AWTException, RigException, IOException {
        Display.need();
        robot = new Robot();
        robot.setAutoDelay(5);
        // In real time, so that there is something to stop.
        rig = (PracticeRig) Rigs.open("virtual", Map.of("realTime", "true"));
        book = RigBook.open(folder, rig.id());
        StandardsHand right = StandardsHand.of(rig, StandardSet.practice());
        desk = new RigDesk(new RigDeskParts(
                rig,
                book,
                new RigStandings(book, Clock.systemUTC(), ZoneOffset.UTC),
                step -> right.plug(wrongPlugs.isEmpty() ? step : wrongPlugs.poll()),
                new RigSetUp(Map.of()),
                any -> StandardSet.practice(),
                null,
                (any, tone) -> LevelSource.ofProbes(rig),
                List::of,
                () -> "A. Person",
                Clock.systemUTC(),
                StudyCabinet.Finder.NONE));
        GalleryPane.onEventThread(() -> window = KioskWindow.open(
                dock,
                SampleStates.named("ready"),
                SampleHouse.MODELS,
                new ScreenSettings(Theme.DARK, 1, Locale.ENGLISH, GalleryPane.ZONE),
                List.of(RigPage.of(desk))));
        await("the window has the focus", () -> window.isFocused());
    }

    @AfterEach
    void closes() throws IOException {
        if (window != null) {
            GalleryPane.onEventThread(window::dispose);
            desk.close();
            book.close();
            rig.close();
        }
    }

    private static void await(String what, Supplier<Boolean> condition) {
        long end = System.currentTimeMillis() + LONGEST_WAIT_MS;
        AtomicReference<Boolean> met = new AtomicReference<>(false);
        while (!met.get() && System.currentTimeMillis() < end) {
            GalleryPane.onEventThread(() -> met.set(condition.get()));
        }
        assertThat(met.get()).as(what).isTrue();
    }

    private void press(int keyCode) {
        robot.keyPress(keyCode);
        robot.keyRelease(keyCode);
    }

    private void openRigPage() {
        robot.keyPress(KeyEvent.VK_CONTROL);
        press(KeyEvent.VK_F4);
        robot.keyRelease(KeyEvent.VK_CONTROL);
        await(
                "the rig page has the keys",
                () -> KeyboardFocusManager.getCurrentKeyboardFocusManager().getFocusOwner() instanceof EntryLine);
    }

    private RigDeskState measure() {
        Object before = desk.state().message();
        press(KeyEvent.VK_F1);
        await("the step was measured", () -> {
            RigDeskState state = desk.state();
            return !state.sounding() && !state.message().equals(before);
        });
        return desk.state();
    }

    @Test
    void calibratesAndOpensTheGateByKeysAlone() {
        openRigPage();
        assertThat(desk.state().standingState()).isEqualTo(ReadingState.FAULT);
        press(KeyEvent.VK_F1);
        await("the walk has begun", () -> desk.state().mode() == Mode.WALK);

        wrongPlugs.add(WalkStep.LOAD);
        assertThat(measure().message().orElseThrow().words().key()).isEqualTo("rigpage-open-saw-load");
        for (int i = 0; i < 5; i++) {
            assertThat(measure().message().orElseThrow().state()).isEqualTo(ReadingState.OK);
        }

        assertThat(desk.state().standingState()).isEqualTo(ReadingState.OK);
        assertThat(book.newest(RigEntry.Checked.class).orElseThrow().passed()).isTrue();
        press(KeyEvent.VK_F1);
        await("the overview is back", () -> desk.state().mode() == Mode.OVERVIEW);
        assertThat(dock.quiet()).isTrue();
    }

    @Test
    void fallsSilentOnEscapeAndWhenThePageIsLeft() {
        openRigPage();
        press(KeyEvent.VK_F4);
        await("levels are heard", () -> !desk.state().levels().isEmpty());
        press(KeyEvent.VK_ESCAPE);
        await("silence", () -> !desk.state().sounding());

        press(KeyEvent.VK_F4);
        await("it sounds again", () -> desk.state().sounding());
        robot.keyPress(KeyEvent.VK_CONTROL);
        press(KeyEvent.VK_F1);
        robot.keyRelease(KeyEvent.VK_CONTROL);
        await("silence", () -> !desk.state().sounding());
    }

    @Test
    void takesNoScanForAValue() {
        openRigPage();
        for (char c : "mch-000117".toCharArray()) {
            press(KeyEvent.getExtendedKeyCodeForChar(c));
        }
        press(KeyEvent.VK_ENTER);

        await("the page says where cabinets are scanned", () -> accessible("tag of a cabinet"));
        assertThat(dock.quiet()).isTrue();
        assertThat(book.entries()).isEmpty();
    }

    private boolean accessible(String words) {
        return reads(window.getContentPane(), words);
    }

    private static boolean reads(java.awt.Container container, String words) {
        for (java.awt.Component child : container.getComponents()) {
            boolean says = child.isShowing()
                    && child instanceof javax.accessibility.Accessible accessible
                    && String.valueOf(accessible.getAccessibleContext().getAccessibleName())
                            .contains(words);
            if (says || child instanceof java.awt.Container inner && reads(inner, words)) {
                return true;
            }
        }
        return false;
    }
}
