package org.docksweep.kiosk.practice;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.docksweep.kiosk.dock.DockState;
import org.docksweep.kiosk.dock.DockState.Phase;
import org.junit.jupiter.api.Test;

class PracticeKioskTest {
    private static final long PATIENCE_S = 120;

    private final Object changed = new Object();

    private DockState await(PracticeKiosk kiosk, String what, Predicate<DockState> wanted) throws InterruptedException {
        long end = System.nanoTime() + Duration.ofSeconds(PATIENCE_S).toNanos();
        synchronized (changed) {
            while (!wanted.test(kiosk.dock().state())) {
                if (System.nanoTime() > end) {
                    throw new AssertionError("never saw " + what + "; the dock shows "
                            + kiosk.dock().state());
                }
                changed.wait(200);
            }
        }
        return kiosk.dock().state();
    }

    private static boolean answered(DockState state) {
        return state.phase() == Phase.ANSWER
                && state.answer().filter(a -> a.route().isPresent()).isPresent();
    }

    @Test
    void takesTheInventedTruckInMarksItsPapersAndLeavesNothingBehind() throws Exception {
        Path folder;
        try (PracticeKiosk kiosk = new PracticeKiosk(Locale.ENGLISH, Optional.empty(), false)) {
            folder = kiosk.folder();
            kiosk.dock().addListener(state -> {
                synchronized (changed) {
                    changed.notifyAll();
                }
            });
            PracticeTruck truck = kiosk.truck();
            int taken = 0;
            for (Optional<PracticeTruck.Cabinet> next = truck.next(kiosk.dock().state());
                    next.isPresent();
                    next = truck.next(kiosk.dock().state())) {
                takeIn(kiosk, next.get());
                taken++;
            }
            assertThat(taken).isBetween(6, 12);
            await(kiosk, "everything sent to nowhere", s -> s.strip().waitingToSend() == 0);
            kiosk.dock().closeList();
            await(
                    kiosk,
                    "the sheet",
                    s -> s.notice()
                            .filter(n -> n.text().key().equals("dock-list-closed"))
                            .isPresent());
            assertMarked(folder.resolve("papers"));
        }
        assertThat(folder).doesNotExist();
    }

    private void takeIn(PracticeKiosk kiosk, PracticeTruck.Cabinet cabinet) throws InterruptedException {
        Predicate<DockState> atHand =
                s -> s.cabinet().filter(c -> c.tag().equals(cabinet.label())).isPresent();
        kiosk.dock().scan(cabinet.label().value());
        DockState seen = await(
                kiosk,
                "the scan of " + cabinet.label(),
                s -> s.phase() == Phase.LOOK && atHand.test(s) || s.notice().isPresent() && s.phase() != Phase.LOOK);
        if (seen.phase() != Phase.LOOK) {
            kiosk.dock().notice(DockState.NoticeAction.CHECK_IN_ANYWAY);
            await(kiosk, "the visual list", s -> s.phase() == Phase.LOOK && atHand.test(s));
        }
        kiosk.dock().lookedOver(cabinet.damage());
        DockState state = await(kiosk, "an answer or a prompt", s -> s.phase() != Phase.LOOK && waitsOrIsAnswered(s));
        for (int prompts = 0; !answered(state) && prompts < 4; prompts++) {
            DockState asked = state;
            if (prompts == 3 || asked.phase() == Phase.ANSWER) {
                kiosk.dock().holdForPerson();
            } else {
                kiosk.dock().plugged();
            }
            state = await(kiosk, "the dock to go on", s -> !s.equals(asked) && waitsOrIsAnswered(s));
        }
        await(kiosk, "a route of " + cabinet.label(), s -> atHand.test(s) && answered(s));
    }

    private static boolean waitsOrIsAnswered(DockState state) {
        return state.phase() == Phase.PLUG || state.phase() == Phase.ANSWER;
    }

    private static void assertMarked(Path papers) throws Exception {
        List<Path> files;
        try (Stream<Path> all = Files.list(papers)) {
            files = all.filter(f -> f.toString().endsWith(".pdf")).toList();
        }
        assertThat(files).as("a tag and a sheet").hasSizeGreaterThanOrEqualTo(2);
        for (Path file : files) {
            try (PDDocument document = Loader.loadPDF(file.toFile())) {
                for (int page = 1; page <= document.getNumberOfPages(); page++) {
                    PDFTextStripper words = new PDFTextStripper();
                    words.setStartPage(page);
                    words.setEndPage(page);
                    assertThat(words.getText(document).replaceAll("\\s", ""))
                            .as(file.getFileName() + " page " + page)
                            .contains("PRACTICE");
                }
            }
        }
    }
}
