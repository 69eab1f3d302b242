package org.docksweep.kiosk.dock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.docksweep.kiosk.dock.SmallHouse.FIRST;

import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.docksweep.contract.ReturnReport;
import org.docksweep.kiosk.dock.DockState.Phase;
import org.docksweep.kiosk.printing.PaperView;
import org.docksweep.paper.RepairTagContent;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Looking at a paper before it is printed: shows what would be printed, prints and records nothing. */
class DockPaperViewTest {
    private static final PaperView VIEW =
            new PaperView(new BufferedImage(2, 1, BufferedImage.TYPE_INT_RGB), 1, 210, 148, Optional.of("DOCK-LABELS"));
    private static final long PATIENCE_S = 10;

    @TempDir
    private Path folder;

    private DockBench bench;
    private final BlockingQueue<PaperView> shown = new LinkedBlockingQueue<>();
    private final BlockingQueue<Object> asked = new LinkedBlockingQueue<>();

    @BeforeEach
    void opens() {
        bench = new DockBench(folder);
        bench.views = content -> {
            asked.add(content);
            return VIEW;
        };
    }

    @AfterEach
    void closes() {
        bench.close();
    }

    @Test
    void showsTheTagThatPrintWouldPrint() throws InterruptedException {
        bench.gate.fail();
        bench.checkIn(FIRST);

        bench.dock.viewTag(shown::add);

        assertThat(shown.poll(PATIENCE_S, TimeUnit.SECONDS)).isSameAs(VIEW);
        RepairTagContent drawn = (RepairTagContent) asked.remove();
        assertThat(drawn.checkIn()).isEqualTo(bench.tags.get(0).checkIn());
        assertThat(bench.tags).as("printed once, by the answer").hasSize(1);
    }

    @Test
    void showsTheSheetOfTheListAtHandAndLeavesItOpen() throws InterruptedException {
        bench.gate.pass();
        bench.checkIn(FIRST);

        bench.dock.viewSheet(shown::add);

        assertThat(shown.poll(PATIENCE_S, TimeUnit.SECONDS)).isSameAs(VIEW);
        assertThat(((ReturnReport) asked.remove()).back()).hasSize(1);
        assertThat(bench.sheets).isEmpty();
        assertThat(bench.dock.state().returns()).isPresent();
    }

    @Test
    void keepsTheAnswerWhenThePaperCannotBeDrawn() throws InterruptedException {
        bench.views = content -> {
            throw new IllegalStateException("a font is missing");
        };
        bench.gate.fail();
        bench.checkIn(FIRST);

        bench.dock.viewTag(shown::add);

        DockState told = bench.notice("dock-paper-not-drawn");
        assertThat(told.notice().orElseThrow().text().arguments()).containsExactly("a font is missing");
        assertThat(told.phase()).isEqualTo(Phase.ANSWER);
        assertThat(told.answer().orElseThrow().jobCode()).isPresent();
        assertThat(shown).isEmpty();
    }
}
