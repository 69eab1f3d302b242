package org.docksweep.kiosk.night;

import java.io.IOException;
import java.lang.management.GarbageCollectorMXBean;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.docksweep.kiosk.practice.PracticeKiosk;
import org.docksweep.kiosk.practice.PracticeTruck;
import org.docksweep.kiosk.screens.KioskWindow;
import org.docksweep.kiosk.screens.ScreenSettings;
import org.docksweep.kiosk.screens.Theme;

/**
 * Practice as long as wanted, its window open, its rig inside, each truck in a practice of its own. Argument: number of cabinets. Prints
 * the memory after every truck. Run with the options of docs/scripts/package-kiosk it shows whether practice fits into what is shipped.
 */
final class LongPractice {
    private static final double MB = 1 << 20;

    private LongPractice() {}

    public static void main(String[] arguments) throws Exception {
        int cabinets = Integer.parseInt(arguments[0]);
        int done = 0;
        while (done < cabinets) {
            try (PracticeKiosk practice = new PracticeKiosk(Locale.ENGLISH, Optional.empty(), false)) {
                memory("practice open", done);
                done += takeIn(practice, cabinets - done);
                memory("truck empty", done);
            }
        }
        System.gc();
        memory("practice ended", done);
        // The event thread of a window that is gone may stay for a second.
        System.exit(0);
    }

    private static int takeIn(PracticeKiosk practice, int most) throws Exception {
        ScreenSettings settings = new ScreenSettings(Theme.DARK, 1, Locale.ENGLISH, practice.zone());
        KioskWindow window = WindowReader.onEventThread(() ->
                KioskWindow.open(practice.dock(), practice.dock().state(), practice.models(), settings, List.of()));
        practice.dock().addListener(window::show);
        DockHand hand = new DockHand(practice.dock(), practice.dock());
        PracticeTruck truck = practice.truck();
        int done = 0;
        for (Optional<PracticeTruck.Cabinet> next = truck.next(practice.dock().state());
                next.isPresent() && done < most;
                next = truck.next(practice.dock().state())) {
            hand.checkIn(next.get().label(), next.get().damage());
            done++;
        }
        WindowReader.onEventThread(() -> {
            window.dispose();
            return null;
        });
        return done;
    }

    private static void memory(String when, int done) throws IOException {
        StringBuilder collections = new StringBuilder();
        for (GarbageCollectorMXBean bean : ManagementFactory.getGarbageCollectorMXBeans()) {
            collections.append(
                    ", %s %d in %d ms".formatted(bean.getName(), bean.getCollectionCount(), bean.getCollectionTime()));
        }
        String resident = Files.readAllLines(Path.of("/proc/self/status")).stream()
                .filter(line -> line.startsWith("VmRSS") || line.startsWith("VmHWM"))
                .map(line -> line.replaceAll("\\s+", " "))
                .reduce((a, b) -> a + ", " + b)
                .orElseThrow();
        System.out.printf(
                Locale.ROOT,
                "%s, %d cabinets: heap in use %.1f MB, %s%s%n",
                when,
                done,
                ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed() / MB,
                resident,
                collections);
    }
}
