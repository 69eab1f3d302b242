package org.docksweep.paper;

import com.lowagie.text.Document;
import com.lowagie.text.Element;
import com.lowagie.text.Paragraph;
import com.lowagie.text.Phrase;
import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.PdfPCell;
import com.lowagie.text.pdf.PdfPTable;
import com.lowagie.text.pdf.PdfWriter;
import java.io.ByteArrayOutputStream;
import java.util.List;
import org.docksweep.paper.PaperFonts.Weight;

/** An A4 sheet: title, one row of headline figures, tables; the foot of every page says page x of y, who and when. */
final class Sheet {
    private static final double SIDE_MM = 15;
    private static final double TOP_MM = 14;
    private static final double FOOT_MM = 17;

    private final PaperFonts fonts = new PaperFonts();
    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    private final Document document = new Document(
            new Rectangle(Ink.points(210), Ink.points(297)),
            Ink.points(SIDE_MM),
            Ink.points(SIDE_MM),
            Ink.points(TOP_MM),
            Ink.points(FOOT_MM));
    private final PaperText text;

    /**
     * A headline figure.
     *
     * @param number the number, formatted
     * @param label what is counted
     * @param alarming whether a person must act on it: shown white on black
     */
    record Figure(String number, String label, boolean alarming) {}

    Sheet(PaperText text, String title, String subtitle) {
        this.text = text;
        PdfWriter writer = PdfWriter.getInstance(document, bytes);
        writer.setPageEvent(new SheetFoot(fonts, text, SIDE_MM));
        PracticeMark.on(writer, fonts, text);
        document.addTitle(title);
        document.addCreator(text.versionLine());
        document.open();
        document.add(new Paragraph(fonts.safe(title), fonts.table(Weight.BOLD, 18)));
        Paragraph under = new Paragraph(fonts.safe(subtitle), fonts.table(Weight.REGULAR, 9.5));
        under.setSpacingAfter(Ink.points(3));
        document.add(under);
    }

    PaperText text() {
        return text;
    }

    PaperFonts fonts() {
        return fonts;
    }

    /** Adds something a sheet draws by itself. */
    void block(PdfPTable block) {
        document.add(block);
    }

    /** Adds a sentence. */
    void sentence(String words) {
        Paragraph paragraph = new Paragraph(fonts.safe(words), fonts.table(Weight.REGULAR, 9));
        paragraph.setSpacingBefore(Ink.points(2));
        document.add(paragraph);
    }

    void figures(List<Figure> figures) {
        PdfPTable row = new PdfPTable(figures.size());
        row.setWidthPercentage(100);
        for (Figure figure : figures) {
            float grey = figure.alarming() ? 1 : 0;
            com.lowagie.text.Font large = fonts.table(Weight.BOLD, 24);
            com.lowagie.text.Font small = fonts.table(Weight.SEMIBOLD, 8.5);
            large.setColor(new java.awt.Color(grey, grey, grey));
            small.setColor(new java.awt.Color(grey, grey, grey));
            PdfPCell cell = new PdfPCell();
            Paragraph number = new Paragraph(figure.number(), large);
            number.setAlignment(Element.ALIGN_CENTER);
            number.setLeading(26);
            Paragraph label = new Paragraph(figure.label(), small);
            label.setAlignment(Element.ALIGN_CENTER);
            label.setLeading(12);
            cell.addElement(number);
            cell.addElement(label);
            cell.setPaddingBottom(6);
            cell.setBorderWidth(1);
            if (figure.alarming()) {
                cell.setBackgroundColor(java.awt.Color.BLACK);
                cell.setBorderColor(java.awt.Color.WHITE);
            }
            row.addCell(cell);
        }
        document.add(row);
    }

    /** Adds a table, or its heading and a sentence where it has no rows. */
    void table(SheetTable table, String whenEmpty) {
        PdfPTable drawn = table.draw(fonts, text);
        if (table.isEmpty()) {
            PdfPCell cell = new PdfPCell(new Phrase(fonts.safe(whenEmpty), fonts.table(Weight.REGULAR, 9)));
            cell.setColspan(drawn.getNumberOfColumns());
            cell.setBorder(Rectangle.NO_BORDER);
            cell.setPadding(3);
            drawn.addCell(cell);
        }
        document.add(drawn);
    }

    /** Adds a heading and sentences under it, one per line with a dot before. */
    void words(String heading, List<String> sentences) {
        Paragraph title = new Paragraph(fonts.safe(heading), fonts.table(Weight.BOLD, 13));
        title.setSpacingBefore(Ink.points(5));
        title.setSpacingAfter(Ink.points(1.5));
        document.add(title);
        for (String sentence : sentences) {
            Paragraph line = new Paragraph(fonts.safe("\u2022  " + sentence), fonts.table(Weight.REGULAR, 10));
            line.setLeading(13.5f);
            line.setIndentationLeft(Ink.points(3));
            line.setFirstLineIndent(-Ink.points(3));
            document.add(line);
        }
    }

    /** Adds a drawing over the whole width; it is never torn apart by the end of a page. */
    void drawing(double heightMm, java.util.function.BiConsumer<Ink, Box> drawing) {
        PdfPTable frame = new PdfPTable(1);
        frame.setWidthPercentage(100);
        frame.setSpacingBefore(Ink.points(3));
        frame.setKeepTogether(true);
        PdfPCell cell = new PdfPCell();
        cell.setBorder(Rectangle.NO_BORDER);
        cell.setFixedHeight(Ink.points(heightMm));
        double pageMm = document.getPageSize().getHeight() / Ink.POINTS_PER_MM;
        cell.setCellEvent((c, place, canvases) -> drawing.accept(
                new Ink(canvases[PdfPTable.LINECANVAS], fonts, pageMm),
                new Box(
                        place.getLeft() / Ink.POINTS_PER_MM,
                        pageMm - place.getTop() / Ink.POINTS_PER_MM,
                        place.getWidth() / Ink.POINTS_PER_MM,
                        heightMm)));
        frame.addCell(cell);
        document.add(frame);
    }

    void newPage() {
        document.newPage();
    }

    byte[] close() {
        document.close();
        return bytes.toByteArray();
    }
}
