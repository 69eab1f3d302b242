package org.docksweep.kiosk.night;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.NotFoundException;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.docksweep.contract.BenchJobFile;
import org.docksweep.fleet.Route;
import org.docksweep.kiosk.PrintedCode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The whole night without a window: real service as a child process, real dock, real captures. */
class DockNightIT {
    private static final long SEED = 3;
    /** Common resolution of label printers. */
    private static final int LABEL_PRINTER_DPI = 203;

    private static final Pattern TAG_FILE = Pattern.compile("tag-(J[0-9]{2}-[0-9]{5})-(MCH-[0-9]{6})(-label)?\\.pdf");

    @TempDir
    Path folder;

    @Test
    void takesTheTruckInAndPutsEveryCabinetWhereItBelongs() throws Exception {
        Path jar = Capability.serviceJar();
        TruthTable table;
        BenchMorning.Outcome repaired;
        BenchJobFile cleared;
        try (DockNight night =
                PreparedHouse.night(new NightOptions(folder, SEED, jar, false), new PrintWriter(System.out, true))) {
            night.open();
            table = night.takeTruckIn(NightPace.AT_ONCE);
            night.closeNight();
            assertThat(night.acknowledged()).containsExactlyInAnyOrderElementsOf(night.recorded());
            repaired = night.benchMorning(night.bench());
            cleared = night.cleared().orElseThrow();
        }
        table.lines().forEach(System.out::println);
        assertThat(table.rows()).hasSizeGreaterThanOrEqualTo(24);
        assertThat(table.rows())
                .filteredOn(r -> r.match() == TruthTable.Match.WRONG)
                .isEmpty();
        BenchStory.assertRepaired(repaired);
        BenchStory.assertCleared(cleared);
        assertThat(folder.resolve("papers")).isDirectoryContaining("glob:**/evidence-*.pdf");
        long toBench =
                table.rows().stream().filter(r -> r.route() == Route.BENCH).count();
        assertThat(decodedTags()).hasSize((int) (2 * toBench));
        assertThat(folder.resolve("papers")).isDirectoryContaining("glob:**/return-sheet-*.pdf");
        assertThat(folder.resolve("papers")).isDirectoryContaining("glob:**/fleet-status.pdf");
        assertThat(folder.resolve("recordings")).isDirectoryContaining("glob:**/recordings.csv");
    }

    /** Tag files whose printed code says what their name says. */
    private List<String> decodedTags() throws IOException {
        try (Stream<Path> files = Files.list(folder.resolve("papers"))) {
            return files.map(Path::toFile)
                    .map(java.io.File::getName)
                    .filter(name -> name.startsWith("tag-"))
                    .peek(this::assertDecodes)
                    .toList();
        }
    }

    private void assertDecodes(String name) {
        Matcher parts = TAG_FILE.matcher(name);
        assertThat(parts.matches()).as(name).isTrue();
        try (PDDocument pdf =
                Loader.loadPDF(folder.resolve("papers").resolve(name).toFile())) {
            BufferedImage page = new PDFRenderer(pdf).renderImageWithDPI(0, LABEL_PRINTER_DPI, ImageType.GRAY);
            String code = PrintedCode.read(page);
            assertThat(code).as(name).isIn(parts.group(1), parts.group(2));
        } catch (IOException | NotFoundException e) {
            throw new AssertionError(name + " does not decode at " + LABEL_PRINTER_DPI + " dpi", e);
        }
    }
}
