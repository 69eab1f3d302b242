package org.docksweep.paper;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.oned.Code128Writer;
import com.google.zxing.qrcode.QRCodeWriter;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.lowagie.text.pdf.PdfContentByte;
import java.util.Map;

/**
 * Scan codes as filled rectangles: Code 128 (ISO/IEC 15417) and QR (ISO/IEC 18004) with their quiet zones. Modules are
 * whole dots of a label printer with 8 dots per millimetre (203 dpi), so that no bar comes out wider than its sister.
 */
final class CodeBlocks {
    /** Width of a Code 128 module: 3 dots of 0.125 mm. */
    static final double BAR_MODULE_MM = 0.375;
    /** Quiet zone of Code 128 in modules, each side. */
    static final int BAR_QUIET_MODULES = 10;
    /** Quiet zone of QR in modules, each side. */
    static final int QR_QUIET_MODULES = 4;

    private CodeBlocks() {}

    /** Modules of a Code 128 from start to stop without quiet zones; true is a bar. */
    static boolean[] code128(String content) {
        return new Code128Writer().encode(content);
    }

    /** Modules of a QR code, level M, without quiet zone; true is dark. */
    static BitMatrix qr(String content) {
        try {
            return new QRCodeWriter()
                    .encode(
                            content,
                            BarcodeFormat.QR_CODE,
                            0,
                            0,
                            Map.of(EncodeHintType.MARGIN, 0, EncodeHintType.ERROR_CORRECTION, ErrorCorrectionLevel.M));
        } catch (WriterException e) {
            throw new IllegalArgumentException("\"" + content + "\" does not fit into a QR code", e);
        }
    }

    static double code128WidthMm(String content) {
        return (code128(content).length + 2 * BAR_QUIET_MODULES) * BAR_MODULE_MM;
    }

    static double qrWidthMm(String content, double moduleMm) {
        return (qr(content).getWidth() + 2 * QR_QUIET_MODULES) * moduleMm;
    }

    /** Draws a Code 128 whose left quiet zone begins at {@code xMm}. */
    static void drawCode128(Ink ink, String content, double xMm, double yMm, double heightMm) {
        boolean[] modules = code128(content);
        BitMatrix row = new BitMatrix(modules.length, 1);
        for (int i = 0; i < modules.length; i++) {
            if (modules[i]) {
                row.set(i, 0);
            }
        }
        fillDark(ink, row, xMm + BAR_QUIET_MODULES * BAR_MODULE_MM, yMm, BAR_MODULE_MM, heightMm);
    }

    /** Draws a QR code whose quiet zone begins at {@code xMm}, {@code yMm}. */
    static void drawQr(Ink ink, String content, double xMm, double yMm, double moduleMm) {
        double quietMm = QR_QUIET_MODULES * moduleMm;
        fillDark(ink, qr(content), xMm + quietMm, yMm + quietMm, moduleMm, moduleMm);
    }

    /** One path for all: rectangles filled one by one show hair lines between them on screens. */
    private static void fillDark(
            Ink ink, BitMatrix modules, double xMm, double yMm, double moduleWidthMm, double moduleHeightMm) {
        PdfContentByte canvas = ink.canvas();
        for (int row = 0; row < modules.getHeight(); row++) {
            int column = 0;
            while (column < modules.getWidth()) {
                int end = column;
                while (end < modules.getWidth() && modules.get(end, row)) {
                    end++;
                }
                if (end > column) {
                    canvas.rectangle(
                            ink.x(xMm + column * moduleWidthMm),
                            ink.y(yMm + (row + 1) * moduleHeightMm),
                            Ink.points((end - column) * moduleWidthMm),
                            Ink.points(moduleHeightMm));
                }
                column = Math.max(end, column + 1);
            }
        }
        canvas.fill();
    }
}
