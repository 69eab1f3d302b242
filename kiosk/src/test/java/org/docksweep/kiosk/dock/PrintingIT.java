package org.docksweep.kiosk.dock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.docksweep.kiosk.dock.SmallHouse.BIAMPED;
import static org.docksweep.kiosk.dock.SmallHouse.FIRST;
import static org.docksweep.kiosk.dock.SmallHouse.SECOND;

import java.awt.image.BufferedImage;
import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import javax.imageio.ImageIO;
import org.docksweep.fleet.AssetTag;
import org.docksweep.kiosk.PrintedCode;
import org.docksweep.paper.TagForm;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Tags and sheets through {@code javax.print} into a real print queue of this machine, and looked at where they arrive. */
class PrintingIT {
    private static final int LABEL_PRINTER_DPI = 203;
    private static final double MM_PER_INCH = 25.4;
    /** Two device pixels of the printer. */
    private static final double SIZE_MM = 0.3;

    private static final int A4_SHORT_MM = 210;
    private static final int A4_LONG_MM = 297;

    @TempDir
    Path folder;

    /** What a step did: state of the tag, notice, records made so far. */
    private record Did(String tag, String notice, int records) {}

    /** A kiosk in a process of its own. */
    private static final class Kiosk implements AutoCloseable {
        private final Process process;
        private final BufferedReader out;
        private final Writer in;

        Kiosk(Path folder, TagForm form, PrintServer server) throws IOException {
            ProcessBuilder builder = new ProcessBuilder(
                    Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                    "-Djava.awt.headless=true",
                    "-XX:TieredStopAtLevel=1",
                    "-cp",
                    System.getProperty("java.class.path"),
                    PrintingKiosk.class.getName(),
                    folder.toString(),
                    form.name());
            builder.environment().put("CUPS_SERVER", server.address());
            process = builder.redirectError(ProcessBuilder.Redirect.INHERIT).start();
            out = process.inputReader(StandardCharsets.UTF_8);
            in = process.outputWriter(StandardCharsets.UTF_8);
            read("up");
        }

        private String read(String start) throws IOException {
            for (String line = out.readLine(); line != null; line = out.readLine()) {
                if (line.startsWith(start)) {
                    return line.substring(start.length()).strip();
                }
            }
            throw new AssertionError("the kiosk ended before it said " + start);
        }

        Did step(String words) throws IOException {
            in.write(words + "\n");
            in.flush();
            String[] did = read("did").split("\\|", -1);
            return new Did(did[0], did[1], Integer.parseInt(did[2]));
        }

        @Override
        public void close() throws IOException, InterruptedException {
            in.close();
            if (!process.waitFor(20, TimeUnit.SECONDS)) {
                process.destroyForcibly();
            }
        }
    }

    @ParameterizedTest
    @EnumSource(TagForm.class)
    void printsTagsAtTheirSizeWithCodesThatRead(TagForm form) throws Exception {
        PrintServer.need();
        try (PrintServer server = PrintServer.start(folder.resolve("cups"))) {
            Kiosk kiosk = new Kiosk(folder.resolve("kiosk"), form, server);
            try (kiosk) {
                Did did = kiosk.step("fail " + FIRST);
                assertThat(did.tag()).isEqualTo("PRINTED");
                assertThat(did.notice()).isEmpty();
                assertTag(server.job(1), form, FIRST, "J01-00001");
                assertThat(kiosk.step("reprint").tag()).isEqualTo("PRINTED");
                assertTag(server.job(2), form, FIRST, "J01-00001");
            }
        }
    }

    /** One night with everything a printer does to people; its cabinets are counted at the end. */
    @Test
    void goesOnWithoutPaperAndWithoutAPrinter() throws Exception {
        PrintServer.need();
        try (PrintServer server = PrintServer.start(folder.resolve("cups"))) {
            Kiosk kiosk = new Kiosk(folder.resolve("kiosk"), TagForm.LABEL_100_X_150, server);
            try (kiosk) {
                server.takePaperOut();
                Did first = kiosk.step("fail " + FIRST);
                server.awaitStopped();
                Did second = kiosk.step("fail " + SECOND);
                say("out of paper", second);
                assertThat(second.tag()).isEqualTo("WAITS_AT_PRINTER");
                assertThat(second.notice())
                        .contains(SECOND.value())
                        .contains("out of paper")
                        .contains("by itself");
                assertThat(second.records()).as("recorded all the same").isGreaterThan(first.records());
                assertThat(server.jobs()).isEmpty();
                server.putPaperIn();
                assertTag(server.job(1), TagForm.LABEL_100_X_150, FIRST, "J01-00001");
                assertTag(server.job(2), TagForm.LABEL_100_X_150, SECOND, "J01-00002");

                server.refuseJobs();
                Did refused = kiosk.step("fail " + BIAMPED);
                say("queue refuses jobs", refused);
                assertThat(refused.tag()).isEqualTo("FAILED");
                assertThat(refused.notice()).contains(BIAMPED.value()).contains("not accepting");
                server.acceptJobs();
                server.removeQueue();
                Did gone = kiosk.step("reprint");
                say("printer gone", gone);
                assertThat(gone.tag()).isEqualTo("FAILED");
                // Java finds it missing, or still believes in it and the print system says so.
                assertThat(gone.notice()).containsPattern("no print queue TAG|printer or class does not exist");
                assertThat(papers()).contains("tag-J01-00003-" + BIAMPED + "-label.pdf");
                server.makeQueue();
                assertThat(kiosk.step("reprint").tag()).isEqualTo("PRINTED");
                assertTag(server.job(3), TagForm.LABEL_100_X_150, BIAMPED, "J01-00003");

                Did closed = kiosk.step("close");
                assertThat(closed.notice()).contains("closed: 3 of 3 back");
                BufferedImage sheet = picture(server.job(4));
                assertSize(sheet, A4_SHORT_MM, A4_LONG_MM);
                assertThat(papers()).anyMatch(name -> name.startsWith("return-sheet-R-1"));
                assertThat(closed.records()).isGreaterThan(refused.records());
            }
        }
    }

    private static void say(String fault, Did did) {
        System.out.println("| " + fault + " | " + did.notice() + " | " + did.records() + " records, none lost |");
    }

    private List<String> papers() {
        return List.of(folder.resolve("kiosk").resolve("papers").toFile().list());
    }

    private void assertTag(Path job, TagForm form, AssetTag tag, String jobCode) throws Exception {
        BufferedImage page = picture(job);
        assertSize(page, form.widthMm(), form.heightMm());
        assertThat(PrintedCode.read(page)).isIn(tag.value(), jobCode);
    }

    private static void assertSize(BufferedImage page, double widthMm, double heightMm) {
        assertThat(page.getWidth() * MM_PER_INCH / LABEL_PRINTER_DPI).isCloseTo(widthMm, within(SIZE_MM));
        assertThat(page.getHeight() * MM_PER_INCH / LABEL_PRINTER_DPI).isCloseTo(heightMm, within(SIZE_MM));
    }

    /** What a label printer would put on paper. */
    private BufferedImage picture(Path job) throws Exception {
        File png = Files.createTempFile(folder, "page", ".png").toFile();
        Process interpreter = new ProcessBuilder(
                        "gs",
                        "-q",
                        "-dSAFER",
                        "-dBATCH",
                        "-dNOPAUSE",
                        "-sDEVICE=pnggray",
                        "-r" + LABEL_PRINTER_DPI,
                        "-sOutputFile=" + png,
                        job.toString())
                .redirectErrorStream(true)
                .start();
        String words = new String(interpreter.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(interpreter.waitFor(60, TimeUnit.SECONDS)).as(words).isTrue();
        assertThat(interpreter.exitValue()).as(words).isZero();
        return ImageIO.read(png);
    }
}
