package org.docksweep.kiosk.screens;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;

/** The keys that are alive, as buttons: expected step, stop and long names wide, the others two in a row. */
final class KeyPad extends JPanel {
    private static final long serialVersionUID = 1;
    /** Widest word that a button of half the width has room for, beside the widest key. */
    private static final int LONGEST_WORD = 96;

    private final transient Sizes sizes;
    private final List<KeyButton> buttons = new ArrayList<>();
    private transient List<Place> shown;

    /** A key and how much room it has. */
    private record Place(Command command, boolean high, boolean wide) {}

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
        List<Place> next = offers.stream().map(this::place).toList();
        if (!next.equals(shown)) {
            shown = next;
            layOutKeys();
        }
    }

    /** Only when other keys come alive: a button taken out under a finger would never hear of its release. */
    private void layOutKeys() {
        removeAll();
        for (int i = 0; i < shown.size(); i++) {
            Place place = shown.get(i);
            add(
                    buttons.get(i),
                    "growx, wmin 0, h " + sizes.px(place.high() ? 80 : Sizes.TOUCH) + "px!"
                            + (place.wide() ? ", span 2" : ""));
        }
        setVisible(!shown.isEmpty());
        revalidate();
        repaint();
    }

    private Place place(Offer offer) {
        boolean high = offer.kind() != Offer.Kind.PLAIN;
        double longest = Arrays.stream(offer.label().split(" "))
                .mapToDouble(word -> Ink.width(word, sizes.semiBold(16)))
                .max()
                .orElse(0);
        return new Place(offer.command(), high, high || longest > sizes.px(LONGEST_WORD));
    }
}
