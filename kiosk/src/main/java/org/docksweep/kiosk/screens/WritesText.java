package org.docksweep.kiosk.screens;

import java.util.List;

/** A component that paints text and can tell, after painting, what it wrote and what did not fit. */
interface WritesText {
    /** Texts of the last painting that did not fit. */
    List<String> shortfalls();

    /** Lines of the last painting. */
    List<Ink.Written> written();
}
