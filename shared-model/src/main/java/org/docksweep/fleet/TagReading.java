package org.docksweep.fleet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What a scan says, before anything is looked up. */
public sealed interface TagReading {
    /** A scanner may send at most this many characters; more is noise or a document. */
    int MAX_SCAN_CHARACTERS = 512;

    /**
     * Exactly one tag was read.
     *
     * @param tag the tag
     * @param cleaned whether stray characters had to be taken away
     */
    record One(AssetTag tag, boolean cleaned) implements TagReading {}

    /**
     * Two or more different tags in one scan: a second label sits on the cabinet.
     *
     * @param tags the tags in the order read
     */
    record Several(List<AssetTag> tags) implements TagReading {
        public Several {
            tags = List.copyOf(tags);
        }
    }

    /**
     * Nothing that looks like a tag.
     *
     * @param text what was read, printable, at most 40 characters
     */
    record None(String text) implements TagReading {}

    /**
     * Reads a raw scan. Case, blanks, control characters and dash look-alikes are forgiven; a tag is never guessed from
     * a part of a longer word.
     *
     * @param raw text as typed or scanned, may be null
     * @return what was read
     */
    static TagReading read(String raw) {
        String text = raw == null ? "" : raw;
        if (text.length() > MAX_SCAN_CHARACTERS) {
            return new None(shorten(text));
        }
        String plain = text.replaceAll("[\\u2010-\\u2015\\u2212]", "-")
                .replaceAll("[\\p{Cntrl}\\u200B-\\u200F\\uFEFF]", " ")
                .strip()
                .toUpperCase(Locale.ROOT);
        if (AssetTag.FORM.matcher(plain).matches()) {
            return new One(new AssetTag(plain), !plain.equalsIgnoreCase(text));
        }
        List<AssetTag> found = new ArrayList<>();
        // Two labels read in one go arrive glued together: MCH-000123MCH-000124.
        Matcher matcher = EMBEDDED.matcher(plain.replaceAll("\\s*-\\s*", "-"));
        while (matcher.find()) {
            AssetTag tag = new AssetTag(matcher.group());
            if (!found.contains(tag)) {
                found.add(tag);
            }
        }
        if (found.size() == 1) {
            return new One(found.get(0), true);
        }
        return found.isEmpty() ? new None(shorten(plain)) : new Several(found);
    }

    /** A tag within other characters: not the tail of a longer word, not the head of a longer number. */
    Pattern EMBEDDED = Pattern.compile("(?<![A-Z])[A-Z]{2,5}-[0-9]{3,8}(?![0-9])");

    private static String shorten(String text) {
        String printable = text.replaceAll("\\p{Cntrl}", "?");
        return printable.length() <= 40 ? printable : printable.substring(0, 39) + "\u2026";
    }
}
