package org.docksweep.kiosk.commands;

import java.io.IOException;
import java.io.PrintWriter;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.docksweep.kiosk.practice.PracticeKiosk;
import org.docksweep.kiosk.screens.Around;
import org.docksweep.kiosk.screens.NoteWindow;
import org.docksweep.kiosk.screens.RigPage;
import org.docksweep.kiosk.screens.ScreenSettings;
import org.docksweep.kiosk.screens.Theme;
import org.docksweep.sweep.RigException;

/** Practice in its window: dock and rig, nothing that needs a service. */
final class PracticeRun {
    private final Theme theme;
    private final double scale;
    private final Locale locale;
    private final Optional<String> printer;
    private PrintWriter stopWhenOpen;

    PracticeRun(Theme theme, double scale, Locale locale, String printer) {
        this.theme = theme;
        this.scale = scale;
        this.locale = locale;
        this.printer = Optional.ofNullable(printer);
    }

    /** Closes the window as soon as it has painted itself. */
    PracticeRun stoppingWhenOpen(PrintWriter out) {
        stopWhenOpen = out;
        return this;
    }

    /** Opens the window and returns when practice is over. */
    Exit.To open() throws InterruptedException, IOException, RigException {
        AtomicReference<NoteWindow> preparing = new AtomicReference<>();
        Stand.onEventThread(() -> preparing.set(NoteWindow.open(
                new ScreenSettings(theme, scale, locale, ZoneOffset.UTC),
                "practice.word.PREPARING",
                "practice.sentence.PREPARING")));
        try (PracticeKiosk kiosk = new PracticeKiosk(locale, printer, true)) {
            Exit exit = new Exit();
            Stand stand = Stand.open(
                    kiosk.dock(),
                    kiosk.models(),
                    new ScreenSettings(theme, scale, locale, kiosk.zone()),
                    List.of(RigPage.of(kiosk.rigDesk())),
                    new Around(
                            Optional.empty(),
                            Optional.empty(),
                            Optional.of(() -> exit.to(Exit.To.WORK)),
                            Optional.of(kiosk.truck())));
            Stand.onEventThread(preparing.get()::dispose);
            stand.stopWhenOpen(stopWhenOpen, exit);
            return exit.await(stand);
        } finally {
            Stand.onEventThread(preparing.get()::dispose);
        }
    }
}
