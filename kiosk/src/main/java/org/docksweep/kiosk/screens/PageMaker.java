package org.docksweep.kiosk.screens;

/**
 * Makes a page of the window besides the dock page. A page that is not made is not offered: the bar shows only pages
 * that work. Subclasses live in this package, with the parts that all pages are drawn with.
 */
public abstract class PageMaker {
    PageMaker() {}

    /** Makes the page, on the event thread, after the look was installed. */
    abstract Page make(Sizes sizes, Texts texts);
}
