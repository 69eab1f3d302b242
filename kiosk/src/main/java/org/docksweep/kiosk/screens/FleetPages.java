package org.docksweep.kiosk.screens;

import javax.swing.SwingUtilities;
import org.docksweep.kiosk.teaching.Teaching;

/** Makes the fleet page of a window. */
public final class FleetPages extends PageMaker {
    private final Teaching teaching;

    /**
     * Makes the maker.
     *
     * @param teaching what is behind the page; closed by whoever made it
     */
    public FleetPages(Teaching teaching) {
        this.teaching = teaching;
    }

    @Override
    Page make(Sizes sizes, Texts texts) {
        FleetPage page = new FleetPage(teaching, teaching.state(), sizes, texts);
        teaching.addListener(state -> SwingUtilities.invokeLater(() -> page.show(state)));
        return page;
    }
}
