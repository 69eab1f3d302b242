package org.docksweep.kiosk.screens;

import java.util.concurrent.atomic.AtomicReference;
import javax.swing.JComponent;
import javax.swing.SwingUtilities;
import org.docksweep.kiosk.rig.RigDesk;
import org.docksweep.kiosk.rig.RigDeskState;

/** The rig page as one of the pages of a window. */
public final class RigPage extends PageMaker {
    private final RigDesk desk;

    private RigPage(RigDesk desk) {
        this.desk = desk;
    }

    /**
     * The page of a rig.
     *
     * @param desk what is behind it; closed by whoever made it
     * @return maker of the page
     */
    public static PageMaker of(RigDesk desk) {
        return new RigPage(desk);
    }

    @Override
    Page make(Sizes sizes, Texts texts) {
        RigPane pane = new RigPane(desk, desk.state(), sizes, texts);
        AtomicReference<RigDeskState> waiting = new AtomicReference<>();
        desk.addListener(state -> {
            // Of states that come faster than the screen paints, only the newest is shown.
            if (waiting.getAndSet(state) == null) {
                SwingUtilities.invokeLater(() -> pane.show(waiting.getAndSet(null)));
            }
        });
        return new Made(pane, desk);
    }

    private record Made(RigPane pane, RigDesk desk) implements Page {
        @Override
        public PageName name() {
            return PageName.RIG;
        }

        @Override
        public JComponent component() {
            return pane;
        }

        @Override
        public JComponent keyTarget() {
            return pane.entry();
        }

        @Override
        public boolean perform(Command command) {
            return pane.perform(command);
        }

        @Override
        public void shown(boolean up) {
            // The dock needs the rig when the person has gone back to it.
            if (up) {
                desk.look();
            } else if (desk.state().sounding()) {
                desk.stop();
            }
        }
    }
}
