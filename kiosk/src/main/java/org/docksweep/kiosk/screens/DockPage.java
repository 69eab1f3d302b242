package org.docksweep.kiosk.screens;

import javax.swing.JComponent;

/** The dock page as one of the pages. */
record DockPage(KioskPane pane) implements Page {
    @Override
    public PageName name() {
        return PageName.DOCK;
    }

    @Override
    public JComponent component() {
        return pane;
    }

    @Override
    public JComponent keyTarget() {
        return pane.scanField();
    }

    @Override
    public boolean perform(Command command) {
        return pane.perform(command);
    }

    @Override
    public void shown(boolean up) {
        // The dock goes on in the background.
    }
}
