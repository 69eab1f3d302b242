package org.docksweep.kiosk;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.MultiFormatReader;
import com.google.zxing.NotFoundException;
import com.google.zxing.client.j2se.BufferedImageLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Map;

/** What a scanner reads from a printed page. */
public final class PrintedCode {
    private PrintedCode() {}

    /**
     * The first code on a page.
     *
     * <p>Only the two symbologies that are printed are looked for: a reader with all of them switched on now and then takes
     * bars of the short codes of retail (eight digits) out of a line of small text, as a scanner in the hall would.
     *
     * @throws NotFoundException if there is none
     */
    public static String read(BufferedImage page) throws NotFoundException {
        return new MultiFormatReader()
                .decode(
                        new BinaryBitmap(new HybridBinarizer(new BufferedImageLuminanceSource(page))),
                        Map.of(
                                DecodeHintType.POSSIBLE_FORMATS,
                                List.of(BarcodeFormat.CODE_128, BarcodeFormat.QR_CODE),
                                DecodeHintType.TRY_HARDER,
                                Boolean.TRUE))
                .getText();
    }
}
