package org.docksweep.paper;

import com.lowagie.text.Chunk;
import com.lowagie.text.Element;
import com.lowagie.text.Font;
import com.lowagie.text.Phrase;
import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.PdfPCell;
import com.lowagie.text.pdf.PdfPCellEvent;
import com.lowagie.text.pdf.PdfPTable;
import java.util.ArrayList;
import java.util.List;
import org.docksweep.paper.PaperFonts.Weight;

/**
 * A table of a sheet: its heading and column heads come again on every page; a row is never torn apart; rules instead of
 * shades, so that nothing is lost on a black-and-white printer.
 */
final class SheetTable {
    private static final double FONT_PT = 8.5;
    private static final float SIGN_PT = 9;
    private static final float BAR_PT = 6;
    /** A table of up to so many rows starts on a new page rather than being torn. */
    private static final int KEPT_TOGETHER_ROWS = 12;

    private final String heading;
    private final List<Column> columns = new ArrayList<>();
    private final List<List<Cell>> rows = new ArrayList<>();

    private record Column(String key, float share, boolean number) {}

    /**
     * What stands in a cell.
     *
     * @param words words or number, may be empty
     * @param strong whether in bold
     * @param sign sign before the words, or null
     * @param bar share of a bar that is filled, 0 to 1, or null for no bar
     */
    record Cell(String words, boolean strong, Sign sign, Double bar) {
        static Cell of(String words) {
            return new Cell(words == null ? "" : words, false, null, null);
        }

        static Cell strong(String words) {
            return new Cell(words, true, null, null);
        }

        static Cell signed(Sign sign, String words) {
            return new Cell(words, sign == Sign.CROSS, sign, null);
        }

        static Cell bar(double share) {
            return new Cell("", false, null, Math.max(0, Math.min(1, share)));
        }
    }

    SheetTable(String heading) {
        this.heading = heading;
    }

    SheetTable words(String key, double share) {
        columns.add(new Column(key, (float) share, false));
        return this;
    }

    SheetTable number(String key, double share) {
        columns.add(new Column(key, (float) share, true));
        return this;
    }

    void row(Cell... cells) {
        if (cells.length != columns.size()) {
            throw new IllegalArgumentException("table \"" + heading + "\" has " + columns.size()
                    + " columns, but the row has " + cells.length + " cells");
        }
        rows.add(List.of(cells));
    }

    boolean isEmpty() {
        return rows.isEmpty();
    }

    PdfPTable draw(PaperFonts fonts, PaperText text) {
        PdfPTable table = new PdfPTable(columns.size());
        float[] shares = new float[columns.size()];
        for (int i = 0; i < shares.length; i++) {
            shares[i] = columns.get(i).share();
        }
        table.setWidths(shares);
        table.setWidthPercentage(100);
        table.setSpacingBefore(Ink.points(6));
        table.setSplitLate(true);
        table.setKeepTogether(rows.size() <= KEPT_TOGETHER_ROWS);
        PdfPCell title = new PdfPCell(new Phrase(fonts.safe(heading), fonts.table(Weight.BOLD, 11)));
        title.setColspan(columns.size());
        title.setBorder(Rectangle.NO_BORDER);
        title.setPaddingLeft(0);
        title.setPaddingBottom(4);
        table.addCell(title);
        if (isEmpty()) {
            table.setHeaderRows(0);
            return table;
        }
        for (Column column : columns) {
            PdfPCell head = cell(fonts, column, Cell.strong(column.key().isEmpty() ? "" : text.get(column.key())));
            head.setBorderWidthBottom(1);
            head.setVerticalAlignment(Element.ALIGN_BOTTOM);
            table.addCell(head);
        }
        table.setHeaderRows(2);
        for (List<Cell> row : rows) {
            for (int i = 0; i < columns.size(); i++) {
                table.addCell(cell(fonts, columns.get(i), row.get(i)));
            }
        }
        return table;
    }

    private static PdfPCell cell(PaperFonts fonts, Column column, Cell content) {
        Weight weight = content.strong() ? Weight.BOLD : Weight.REGULAR;
        PdfPCell cell = new PdfPCell(new Phrase(unbroken(fonts.safe(content.words()), fonts.table(weight, FONT_PT))));
        cell.setLeading(0, (float) PaperFonts.LEADING);
        cell.setBorder(Rectangle.BOTTOM);
        cell.setBorderWidthBottom(0.4f);
        cell.setPadding(2.5f);
        cell.setPaddingBottom(4);
        cell.setPaddingLeft(content.sign() == null ? 2.5f : SIGN_PT + 5);
        cell.setPaddingRight(column.number() ? 5 : 2.5f);
        cell.setHorizontalAlignment(column.number() ? Element.ALIGN_RIGHT : Element.ALIGN_LEFT);
        if (content.sign() != null) {
            cell.setCellEvent(sign(content.sign()));
        } else if (content.bar() != null) {
            cell.setCellEvent(bar(content.bar()));
        }
        return cell;
    }

    /** Breaks at blanks only: a tag or a code must not be torn at its hyphen. */
    private static Chunk unbroken(String words, Font font) {
        Chunk chunk = new Chunk(words, font);
        chunk.setSplitCharacter((start, current, end, text, chunks) -> Character.isWhitespace(text[current]));
        return chunk;
    }

    private static PdfPCellEvent sign(Sign sign) {
        return (cell, place, canvases) -> sign.draw(
                canvases[PdfPTable.TEXTCANVAS], place.getLeft() + 2, place.getTop() - SIGN_PT - 4.8f, SIGN_PT);
    }

    private static PdfPCellEvent bar(double share) {
        return (cell, place, canvases) -> {
            var canvas = canvases[PdfPTable.TEXTCANVAS];
            float left = place.getLeft() + 3;
            float width = place.getWidth() - 6;
            float bottom = place.getTop() - BAR_PT - 6.2f;
            canvas.saveState();
            canvas.setGrayFill(0.25f);
            canvas.rectangle(left, bottom, width * (float) share, BAR_PT);
            canvas.fill();
            canvas.setLineWidth(0.6f);
            canvas.rectangle(left, bottom, width, BAR_PT);
            canvas.stroke();
            canvas.restoreState();
        };
    }
}
