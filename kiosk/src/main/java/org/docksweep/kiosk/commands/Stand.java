package org.docksweep.kiosk.commands;

import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.io.PrintWriter;
import java.lang.reflect.InvocationTargetException;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import javax.swing.SwingUtilities;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.kiosk.dock.Dock;
import org.docksweep.kiosk.night.NightPace;
import org.docksweep.kiosk.screens.Around;
import org.docksweep.kiosk.screens.KioskWindow;
import org.docksweep.kiosk.screens.PageMaker;
import org.docksweep.kiosk.screens.ScreenSettings;
import org.docksweep.kiosk.screens.Theme;

/** A window on a dock. */
final class Stand {
    /** An answer is left on the screen long enough to be read; common practice, no source. */
    static final NightPace READABLE = index -> TimeUnit.MILLISECONDS.sleep(index == 0 ? 0 : 2500);

    private final CountDownLatch closed = new CountDownLatch(1);
    private volatile KioskWindow window;

    private Stand() {}

    static Stand open(Dock dock, List<CabinetModel> models, ZoneId zone, List<PageMaker> pages)
            throws InterruptedException {
        return open(dock, models, new ScreenSettings(Theme.DARK, 1, Locale.ENGLISH, zone), pages);
    }

    static Stand open(Dock dock, List<CabinetModel> models, ScreenSettings settings, List<PageMaker> pages)
            throws InterruptedException {
        return open(dock, models, settings, pages, Around.NONE);
    }

    static Stand open(
            Dock dock, List<CabinetModel> models, ScreenSettings settings, List<PageMaker> pages, Around around)
            throws InterruptedException {
        Stand stand = new Stand();
        onEventThread(() -> {
            KioskWindow window = KioskWindow.open(dock, dock.state(), models, settings, pages, around);
            stand.window = window;
            dock.addListener(window::show);
            window.addWindowListener(new WindowAdapter() {
                @Override
                public void windowClosed(WindowEvent event) {
                    stand.closed.countDown();
                }
            });
        });
        return stand;
    }

    /** Hears when the window is closed, by whomever. */
    void whenClosed(Runnable then) {
        SwingUtilities.invokeLater(() -> {
            if (closed.getCount() == 0) {
                then.run();
                return;
            }
            window.addWindowListener(new WindowAdapter() {
                @Override
                public void windowClosed(WindowEvent event) {
                    then.run();
                }
            });
        });
    }

    /** Waits until the window has painted itself. */
    void awaitPainted() throws InterruptedException {
        window.awaitPainted();
    }

    /** For a trial start: waits until the window has painted itself, says when, and wants to close. Null for no trial. */
    void stopWhenOpen(PrintWriter out, Exit exit) throws InterruptedException {
        if (out != null) {
            awaitPainted();
            out.println("window " + System.currentTimeMillis());
            out.flush();
            exit.to(Exit.To.CLOSE);
        }
    }

    void awaitClosed() throws InterruptedException {
        closed.await();
    }

    /** Closes the window if it is still there. */
    void close() throws InterruptedException {
        onEventThread(window::dispose);
    }

    static void onEventThread(Runnable work) throws InterruptedException {
        try {
            SwingUtilities.invokeAndWait(work);
        } catch (InvocationTargetException e) {
            throw new IllegalStateException(
                    "the window cannot be opened: " + e.getCause().getMessage(), e.getCause());
        }
    }
}
