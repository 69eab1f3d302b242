package org.docksweep.kiosk.night;

import java.awt.AWTException;
import java.awt.Component;
import java.awt.Container;
import java.awt.Rectangle;
import java.awt.Robot;
import java.awt.image.BufferedImage;
import java.lang.reflect.InvocationTargetException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.FutureTask;
import javax.accessibility.Accessible;
import javax.accessibility.AccessibleContext;
import javax.accessibility.AccessibleRole;
import javax.swing.JFrame;
import javax.swing.SwingUtilities;

/** Reads the window through its accessible texts, as a screen reader would, and takes its picture. */
final class WindowReader {
    private static final long PATIENCE_MS = 10_000;

    private final JFrame window;
    private final Robot eyes;

    WindowReader(JFrame window) throws AWTException {
        this.window = window;
        eyes = new Robot();
    }

    /** Waits until keys that are typed reach the window. */
    void awaitFocus() {
        await("the focus on the window", () -> Optional.of(window.isFocused()).filter(f -> f));
    }

    private static <T> T await(String what, Callable<Optional<T>> ask) {
        long deadline = System.nanoTime() + PATIENCE_MS * 1_000_000;
        Optional<T> found = onEventThread(ask);
        while (found.isEmpty() && System.nanoTime() < deadline) {
            found = onEventThread(ask);
        }
        return found.orElseThrow(() -> new AssertionError("never saw " + what));
    }

    /** The huge word. */
    String word() {
        return onEventThread(() -> showing().stream()
                .filter(c -> "verdict".equals(c.getName()))
                .map(c -> context(c).orElseThrow().getAccessibleName())
                .findFirst()
                .orElse("no verdict plate"));
    }

    /** Waits until the window offers a button and gives the key painted on it. */
    String awaitButton(String labelStart) {
        return await(
                "a button \"" + labelStart + "\"",
                () -> buttons().stream()
                        .filter(b -> b.getAccessibleName().startsWith(labelStart))
                        .map(AccessibleContext::getAccessibleDescription)
                        .findFirst());
    }

    BufferedImage picture() {
        Rectangle area = onEventThread(() -> new Rectangle(
                window.getContentPane().getLocationOnScreen(),
                window.getContentPane().getSize()));
        eyes.waitForIdle();
        return eyes.createScreenCapture(area);
    }

    private List<AccessibleContext> buttons() {
        return showing().stream()
                .flatMap(c -> context(c).stream())
                .filter(c -> c.getAccessibleRole() == AccessibleRole.PUSH_BUTTON && c.getAccessibleName() != null)
                .toList();
    }

    private static Optional<AccessibleContext> context(Component component) {
        return component instanceof Accessible accessible
                ? Optional.ofNullable(accessible.getAccessibleContext())
                : Optional.empty();
    }

    private List<Component> showing() {
        List<Component> all = new ArrayList<>();
        collect(window.getContentPane(), all);
        return all;
    }

    private static void collect(Container container, List<Component> all) {
        for (Component child : container.getComponents()) {
            if (child.isShowing()) {
                all.add(child);
            }
            if (child instanceof Container inner) {
                collect(inner, all);
            }
        }
    }

    /** Whatever was handed to the window before is shown before this runs. */
    static <T> T onEventThread(Callable<T> work) {
        FutureTask<T> task = new FutureTask<>(work);
        try {
            SwingUtilities.invokeAndWait(task);
            return task.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while reading the window", e);
        } catch (InvocationTargetException | java.util.concurrent.ExecutionException e) {
            throw new IllegalStateException("the window cannot be read", e.getCause());
        }
    }
}
