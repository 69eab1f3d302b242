package org.docksweep.kiosk.screens;

import java.util.ArrayList;
import java.util.List;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;

/** The keys that are alive, as buttons: expected step and stop wide, the others two in a row. */
final class KeyPad extends JPanel {
    private static final long serialVersionUID = 1;

    private final transient Sizes sizes;
    private final List<KeyButton> buttons = new ArrayList<>();
    private transient List<Command> shown;

    KeyPad(Sizes sizes) {
        super(new MigLayout(
                "insets 0, gap " + sizes.px(8) + "px " + sizes.px(8) + "px, fillx, wrap 2, hidemode 3",
                "[grow,fill,sg][grow,fill,sg]"));
        this.sizes = sizes;
        setOpaque(false);
    }

    void show(List<Offer> offers) {
        while (buttons.size() < offers.size()) {
            buttons.add(new KeyButton(sizes));
        }
        for (int i = 0; i < offers.size(); i++) {
            buttons.get(i).offer(offers.get(i));
        }
        List<Command> next = offers.stream().map(Offer::command).toList();
        if (!next.equals(shown)) {
            shown = next;
            layOutKeys(offers);
        }
    }

    /** Only when other keys come alive: a button taken out under a finger would never hear of its release. */
    private void layOutKeys(List<Offer> offers) {
        removeAll();
        for (int i = 0; i < offers.size(); i++) {
            boolean wide = offers.get(i).kind() != Offer.Kind.PLAIN;
            add(
                    buttons.get(i),
                    "growx, wmin 0, h " + sizes.px(wide ? 80 : Sizes.TOUCH) + "px!" + (wide ? ", span 2" : ""));
        }
        setVisible(!offers.isEmpty());
        revalidate();
        repaint();
    }
}
