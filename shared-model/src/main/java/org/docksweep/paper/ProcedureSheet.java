package org.docksweep.paper;

import com.lowagie.text.Element;
import com.lowagie.text.Paragraph;
import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.PdfPCell;
import com.lowagie.text.pdf.PdfPTable;
import java.util.ArrayList;
import java.util.List;
import org.docksweep.contract.BenchJobBody;
import org.docksweep.fleet.ProcedureCard;
import org.docksweep.fleet.Reason;
import org.docksweep.paper.PaperFonts.Weight;

/** A procedure card to lay beside the driver: boxes to tick, the numbers of that driver, cautions at their step. A4. */
public final class ProcedureSheet {
    private static final double TEXT_PT = 10;
    private static final double BOX_MM = 5;

    private ProcedureSheet() {}

    /**
     * Draws the card.
     *
     * @param card procedure
     * @param job job it is used for, or null for none
     * @param context language, time zone and who prints
     * @return the document, a PDF of one or more pages
     */
    public static byte[] render(ProcedureCard card, BenchJobBody job, PaperContext context) {
        PaperText text = new PaperText(context);
        Sheet sheet = new Sheet(text, text.word("purpose", card.purpose()), subtitle(card, job, text));
        PdfPTable steps = new PdfPTable(3);
        steps.setWidths(new float[] {9, 8, 163});
        steps.setWidthPercentage(100);
        steps.setSpacingBefore(Ink.points(3));
        int number = 1;
        for (ProcedureCard.Step step : card.steps()) {
            steps.addCell(tickBox());
            steps.addCell(number(sheet.fonts(), text.count(number++)));
            steps.addCell(step(sheet.fonts(), text, step));
        }
        sheet.block(steps);
        sheet.sentence(text.get("procedure.practice") + " " + text.get("caution.local-rules"));
        sheet.sentence(text.get("procedure.signature"));
        return sheet.close();
    }

    private static String subtitle(ProcedureCard card, BenchJobBody job, PaperText text) {
        List<String> parts = new ArrayList<>();
        parts.add(
                card.driverModelCode() == null
                        ? text.get("procedure.generic")
                        : text.get("procedure.driver", card.driverModelCode()));
        parts.add(text.get("procedure.effort", text.count(card.effortMinutes())));
        if (card.polarityProofNeeded()) {
            parts.add(text.get("procedure.polarity"));
        }
        if (job != null) {
            parts.add(text.get("tag.job") + " " + job.code() + ", " + job.tag() + " (" + job.modelCode() + ")");
        }
        return String.join("  \u00b7  ", parts);
    }

    private static PdfPCell bare() {
        PdfPCell cell = new PdfPCell();
        cell.setBorder(Rectangle.BOTTOM);
        cell.setBorderWidthBottom(0.4f);
        cell.setPaddingTop(3);
        cell.setPaddingBottom(5);
        return cell;
    }

    private static PdfPCell tickBox() {
        PdfPCell cell = bare();
        cell.setMinimumHeight(Ink.points(BOX_MM + 3));
        cell.setCellEvent((c, place, canvases) -> {
            var canvas = canvases[PdfPTable.LINECANVAS];
            float side = Ink.points(BOX_MM);
            canvas.saveState();
            canvas.setLineWidth(1);
            canvas.rectangle(place.getLeft() + 1, place.getTop() - side - 4, side, side);
            canvas.stroke();
            canvas.restoreState();
        });
        return cell;
    }

    private static PdfPCell number(PaperFonts fonts, String number) {
        PdfPCell cell = bare();
        Paragraph paragraph = new Paragraph(number, fonts.table(Weight.BOLD, TEXT_PT + 1));
        paragraph.setAlignment(Element.ALIGN_RIGHT);
        cell.addElement(paragraph);
        cell.setPaddingRight(5);
        return cell;
    }

    private static PdfPCell step(PaperFonts fonts, PaperText text, ProcedureCard.Step step) {
        PdfPCell cell = bare();
        line(cell, fonts, Weight.REGULAR, text.reason(step.text()));
        for (Reason number : step.numbers()) {
            line(cell, fonts, Weight.BOLD, text.reason(number));
        }
        if (step.note() != null) {
            line(cell, fonts, Weight.SEMIBOLD, text.get("procedure.note", step.note()));
        }
        for (Reason caution : step.cautions()) {
            line(cell, fonts, Weight.SEMIBOLD, "\u25b2\u00a0" + text.reason(caution));
        }
        return cell;
    }

    private static void line(PdfPCell cell, PaperFonts fonts, Weight weight, String words) {
        Paragraph paragraph = new Paragraph(fonts.safe(words), fonts.table(weight, TEXT_PT));
        paragraph.setLeading(12.5f);
        cell.addElement(paragraph);
    }
}
