package org.docksweep.kiosk.commands;

import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.io.IOException;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import javax.print.PrintService;
import javax.print.PrintServiceLookup;
import javax.print.attribute.standard.PrinterIsAcceptingJobs;
import org.docksweep.kiosk.rig.audio.AudioDevices;
import org.docksweep.kiosk.screens.ScreenSettings;
import org.docksweep.kiosk.screens.SetUpWindow;
import org.docksweep.kiosk.screens.Theme;
import org.docksweep.kiosk.settings.KioskSettings;
import org.docksweep.kiosk.settings.SettingsFile;
import org.docksweep.kiosk.setup.SetUpDesk;
import org.docksweep.kiosk.setup.SetUpParts;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The set-up walk in its window. */
final class SetUpRun {
    private static final Logger LOG = LoggerFactory.getLogger(SetUpRun.class);

    private final Path folder;
    private final Theme theme;
    private final double scale;
    private final Locale locale;

    SetUpRun(Path folder, Theme theme, double scale, Locale locale) {
        this.folder = folder;
        this.theme = theme;
        this.scale = scale;
        this.locale = locale;
    }

    /** Opens the window and returns when the walk is over. */
    Exit.To open() throws InterruptedException {
        SettingsFile file = SettingsFile.in(folder);
        Optional<KioskSettings> before = before(file);
        Exit exit = new Exit();
        SetUpParts parts = new SetUpParts(
                file,
                before,
                folder.resolve("papers"),
                locale.getLanguage(),
                AudioDevices::list,
                SetUpRun::printers,
                end -> exit.to(
                        switch (end) {
                            case STORED -> Exit.To.WORK;
                            case LEFT -> before.isPresent() ? Exit.To.WORK : Exit.To.CLOSE;
                            case PRACTICE -> Exit.To.PRACTICE;
                        }));
        try (SetUpDesk desk = new SetUpDesk(parts)) {
            AtomicReference<SetUpWindow> window = new AtomicReference<>();
            Stand.onEventThread(() -> {
                window.set(SetUpWindow.open(desk, new ScreenSettings(theme, scale, locale, ZoneOffset.UTC)));
                window.get().addWindowListener(new WindowAdapter() {
                    @Override
                    public void windowClosed(WindowEvent event) {
                        exit.to(Exit.To.CLOSE);
                    }
                });
            });
            Exit.To next = exit.await();
            Stand.onEventThread(window.get()::dispose);
            return next;
        }
    }

    /** Settings that cannot be understood are no reason not to make new ones. */
    private static Optional<KioskSettings> before(SettingsFile file) {
        try {
            return file.read();
        } catch (IOException e) {
            LOG.warn("{}", e.getMessage());
            return Optional.empty();
        }
    }

    private static List<SetUpParts.Printer> printers() {
        return Arrays.stream(PrintServiceLookup.lookupPrintServices(null, null))
                .map(service -> new SetUpParts.Printer(service.getName(), accepts(service)))
                .toList();
    }

    /** A queue that does not say is taken to accept. */
    private static boolean accepts(PrintService service) {
        PrinterIsAcceptingJobs says = service.getAttribute(PrinterIsAcceptingJobs.class);
        return says == null || says == PrinterIsAcceptingJobs.ACCEPTING_JOBS;
    }
}
