package org.docksweep.paper;

import com.lowagie.text.Document;
import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.PdfWriter;
import java.io.ByteArrayOutputStream;
import org.docksweep.contract.CheckInBody;

/**
 * The repair tag: one page that hangs on a failed cabinet and tells the bench what the dock saw. A stub to tear off
 * carries the scan code, the asset tag and the destination; the body carries the evidence and the lines to fill in.
 * Everything is black, white or grey, vectors only, with its face embedded.
 */
public final class RepairTag {
    private RepairTag() {}

    /**
     * Draws a tag.
     *
     * @param content what the tag tells; its check-in must have a job code, its cabinet must be that of the check-in,
     *     its book must hold the cabinet model of the check-in
     * @param form paper size and layout
     * @param context language, time zone, site and who prints
     * @return the document, a PDF of exactly one page
     * @throws IllegalArgumentException if the check-in has no job code, or cabinet and check-in do not belong together,
     *     or the book lacks the model
     */
    public static byte[] render(RepairTagContent content, TagForm form, PaperContext context) {
        CheckInBody checkIn = content.checkIn();
        if (checkIn.jobCode() == null) {
            throw new IllegalArgumentException("check-in of " + checkIn.tag() + " goes to " + checkIn.route()
                    + " and has no job code; only a cabinet that goes to BENCH gets a repair tag");
        }
        if (!checkIn.tag().equals(content.cabinet().tag())) {
            throw new IllegalArgumentException("repair tag: the check-in is of " + checkIn.tag()
                    + ", but the cabinet given is " + content.cabinet().tag());
        }
        PaperText text = new PaperText(context);
        PaperFonts fonts = new PaperFonts();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        Document document = new Document(new Rectangle(Ink.points(form.widthMm()), Ink.points(form.heightMm())));
        PdfWriter writer = PdfWriter.getInstance(document, bytes);
        PracticeMark.on(writer, fonts, text);
        document.addTitle(text.get("tag.title", checkIn.jobCode(), checkIn.tag()));
        document.addCreator(text.versionLine());
        document.open();
        Ink ink = new Ink(writer.getDirectContent(), fonts, form.heightMm());
        TagScene scene = new TagScene(ink, text, content, content.book().cabinetModel(checkIn.modelCode()));
        switch (form) {
            case A5_LANDSCAPE -> new TagOnA5(scene).draw();
            case LABEL_100_X_150 -> new TagOnLabel(scene).draw();
        }
        document.close();
        return bytes.toByteArray();
    }
}
