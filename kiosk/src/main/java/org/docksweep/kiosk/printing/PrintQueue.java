package org.docksweep.kiosk.printing;

import java.awt.print.Book;
import java.awt.print.PageFormat;
import java.awt.print.Paper;
import java.awt.print.PrinterException;
import java.awt.print.PrinterJob;
import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.print.PrintService;
import javax.print.PrintServiceLookup;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.printing.PDFPrintable;
import org.apache.pdfbox.printing.Scaling;

/**
 * A print queue of this machine. Every page is printed at its own size, so that labels stay labels and codes stay
 * readable.
 *
 * @param name name of the queue
 */
public record PrintQueue(String name) {

    /**
     * Prints a document; returns when the queue has taken it.
     *
     * @param jobName name of the job
     * @param pdf the document
     * @throws IOException if there is no such queue or it does not take the job; says which queues there are
     */
    public void print(String jobName, InputStream pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf.readAllBytes())) {
            PrinterJob job = PrinterJob.getPrinterJob();
            job.setJobName(jobName);
            job.setPrintService(service());
            Book book = new Book();
            PDFPrintable printable = new PDFPrintable(document, Scaling.ACTUAL_SIZE, false, 0);
            for (int page = 0; page < document.getNumberOfPages(); page++) {
                book.append(printable, format(document.getPage(page).getMediaBox()));
            }
            job.setPageable(book);
            job.print();
        } catch (PrinterException e) {
            throw new IOException("print queue " + name + " does not take the job: " + lastWords(e), e);
        }
    }

    /** Java keeps what the print system said in the cause of the cause, after what it ran. */
    private static String lastWords(Throwable e) {
        String words = "it did not say why";
        for (Throwable at = e; at != null; at = at.getCause()) {
            if (at.getMessage() != null && !at.getMessage().isBlank()) {
                String[] lines = at.getMessage().strip().split("\\R");
                words = lines[lines.length - 1].strip();
            }
        }
        return words;
    }

    /**
     * What holds the queue up, when this machine can tell: a stopped printer takes jobs without a word.
     *
     * @return words such as "out of paper"; empty while it moves
     */
    public Optional<String> trouble() {
        return QueueStanding.trouble(name);
    }

    private static PageFormat format(PDRectangle box) {
        Paper paper = new Paper();
        paper.setSize(box.getWidth(), box.getHeight());
        paper.setImageableArea(0, 0, box.getWidth(), box.getHeight());
        PageFormat format = new PageFormat();
        format.setPaper(paper);
        return format;
    }

    private PrintService service() throws IOException {
        PrintService[] services = PrintServiceLookup.lookupPrintServices(null, null);
        return Arrays.stream(services)
                .filter(s -> s.getName().equals(name))
                .findFirst()
                .orElseThrow(() -> new IOException("there is no print queue " + name + "; "
                        + (services.length == 0
                                ? "this machine knows none"
                                : Arrays.stream(services)
                                        .map(PrintService::getName)
                                        .collect(Collectors.joining(", ", "there are: ", "")))));
    }
}
