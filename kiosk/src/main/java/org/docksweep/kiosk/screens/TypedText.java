package org.docksweep.kiosk.screens;

/** A line that text is typed into. */
interface TypedText {
    /** What stands there now. */
    String typedText();

    /** Takes it away. */
    void clear();
}
