package org.docksweep.kiosk.printing;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.docksweep.contract.FleetStatus;
import org.docksweep.contract.ReturnReport;
import org.docksweep.paper.FleetStatusSheet;
import org.docksweep.paper.PaperContext;
import org.docksweep.paper.RepairTag;
import org.docksweep.paper.RepairTagContent;
import org.docksweep.paper.ReturnSheet;
import org.docksweep.paper.TagForm;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Makes papers as PDF files in a folder, and sends them to a print queue when one is set. */
public final class PaperDesk implements Papers {
    private static final Logger LOG = LoggerFactory.getLogger(PaperDesk.class);

    private final Path folder;
    private final List<TagForm> tagForms;
    private final Optional<PrintQueue> queue;
    private final Supplier<PaperContext> context;

    /**
     * Makes a desk.
     *
     * @param folder folder for papers; made when the first one comes
     * @param tagForms forms of the repair tag; the first one goes to the printer
     * @param queue print queue, or empty for files only
     * @param context foot of every paper, asked for each one
     */
    public PaperDesk(Path folder, List<TagForm> tagForms, Optional<PrintQueue> queue, Supplier<PaperContext> context) {
        if (tagForms.isEmpty()) {
            throw new IllegalArgumentException("a paper desk needs at least one form of the repair tag");
        }
        this.folder = folder;
        this.tagForms = List.copyOf(tagForms);
        this.queue = queue;
        this.context = context;
    }

    @Override
    public PrintResult repairTag(RepairTagContent content) {
        String name =
                "tag-" + content.checkIn().jobCode() + "-" + content.checkIn().tag();
        PrintResult first = null;
        for (TagForm form : tagForms) {
            String suffix = form == TagForm.A5_LANDSCAPE ? "" : "-label";
            PrintResult result =
                    make(name + suffix + ".pdf", () -> RepairTag.render(content, form, context.get()), first == null);
            first = first == null ? result : first;
        }
        return first;
    }

    @Override
    public PrintResult returnSheet(ReturnReport report) {
        String name = "return-sheet-" + fileName(report.list().orderNumber()) + ".pdf";
        return make(name, () -> ReturnSheet.render(report, context.get()), true);
    }

    @Override
    public PrintResult statusSheet(FleetStatus status) {
        return make("fleet-status.pdf", () -> FleetStatusSheet.render(status, context.get()), true);
    }

    @Override
    public PrintResult pdf(String name, byte[] pdf) {
        return make(fileName(name) + ".pdf", () -> pdf, true);
    }

    @Override
    public PaperView viewTag(RepairTagContent content) {
        return view(RepairTag.render(content, tagForms.get(0), context.get()));
    }

    @Override
    public PaperView viewSheet(ReturnReport report) {
        return view(ReturnSheet.render(report, context.get()));
    }

    @Override
    public PaperView view(byte[] pdf) {
        return PaperView.of(pdf, queue.map(PrintQueue::name));
    }

    private PrintResult make(String name, Supplier<byte[]> render, boolean toQueue) {
        Path file = folder.resolve(name);
        try {
            byte[] pdf = render.get();
            Files.createDirectories(folder);
            Path part = folder.resolve(name + ".part");
            Files.write(part, pdf);
            Files.move(part, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
            if (queue.isEmpty() || !toQueue) {
                return new PrintResult(PrintResult.Outcome.SAVED, file, "");
            }
            queue.get().print(name, new ByteArrayInputStream(pdf));
            return queue.get()
                    .trouble()
                    .map(words -> new PrintResult(
                            PrintResult.Outcome.WAITS_AT_PRINTER,
                            file,
                            queue.get().name() + ": " + words))
                    .orElseGet(() -> new PrintResult(PrintResult.Outcome.PRINTED, file, ""));
        } catch (IOException | RuntimeException e) {
            // A paper that fails must never stop the dock; the answer on the screen says so and offers it again.
            LOG.warn("{} could not be made or printed", name, e);
            String words = e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
            return new PrintResult(PrintResult.Outcome.FAILED, Files.exists(file) ? file : null, words);
        }
    }

    private static String fileName(String text) {
        return text.replaceAll("[^A-Za-z0-9._-]", "_");
    }
}
