package org.docksweep.service.imports;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import org.docksweep.service.web.Refusal;

/** Text of a CSV file: UTF-8 with or without a byte order mark. Anything else is named, never guessed. */
final class CsvText {
    private static final String SAVE_AS_UTF8 = "Save the file as CSV in UTF-8 and import it again. Nothing was stored.";

    private CsvText() {}

    static String decode(byte[] file, String contentType) {
        String declared = contentType.toLowerCase(java.util.Locale.ROOT);
        if (declared.contains("charset=") && !declared.matches(".*charset=\"?(utf-8|us-ascii)\"?.*")) {
            throw Refusal.unreadable(
                    "the content type says " + printable(contentType) + "; only UTF-8 is read", SAVE_AS_UTF8);
        }
        if (starts(file, 0xFF, 0xFE) || starts(file, 0xFE, 0xFF)) {
            throw Refusal.unreadable("the file is in UTF-16 (it begins with that byte order mark)", SAVE_AS_UTF8);
        }
        for (int i = 0; i < file.length; i++) {
            if (file[i] == 0) {
                throw Refusal.unreadable(
                        "byte " + i + " is zero: this is UTF-16 without a byte order mark, or no text at all",
                        SAVE_AS_UTF8);
            }
        }
        int mark = starts(file, 0xEF, 0xBB, 0xBF) ? 3 : 0;
        return utf8(file, mark);
    }

    private static boolean starts(byte[] file, int... mark) {
        for (int i = 0; i < mark.length; i++) {
            if (file.length <= i || (file[i] & 0xFF) != mark[i]) {
                return false;
            }
        }
        return true;
    }

    private static String utf8(byte[] file, int from) {
        CharsetDecoder decoder = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        ByteBuffer bytes = ByteBuffer.wrap(file, from, file.length - from);
        CharBuffer text = CharBuffer.allocate(file.length - from + 1);
        CoderResult result = decoder.decode(bytes, text, true);
        if (result.isError()) {
            int line = 1;
            for (int i = 0; i < bytes.position(); i++) {
                line += file[i] == '\n' ? 1 : 0;
            }
            throw Refusal.unreadable(
                    String.format(
                            "line %d holds byte 0x%02X, which is not UTF-8; the file is probably in Windows-1252 or"
                                    + " ISO 8859-1",
                            line, file[bytes.position()] & 0xFF),
                    SAVE_AS_UTF8);
        }
        try {
            if (decoder.flush(text).isError()) {
                throw new CharacterCodingException();
            }
        } catch (CharacterCodingException e) {
            throw Refusal.unreadable("the file ends within a character", SAVE_AS_UTF8);
        }
        return text.flip().toString();
    }

    private static String printable(String text) {
        return text.replaceAll("\\p{Cntrl}", "?");
    }
}
