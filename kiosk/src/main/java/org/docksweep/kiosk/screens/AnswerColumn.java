package org.docksweep.kiosk.screens;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import org.docksweep.fleet.VisualItem;
import org.docksweep.kiosk.dock.DockState;

/** Right quarter: word, way, reason, and the keys that are alive. */
final class AnswerColumn extends JPanel {
    private static final long serialVersionUID = 1;
    private static final int BUTTONS = 3;

    private final transient Sizes sizes;
    private final VerdictPlate plate;
    private final AnswerBody body;
    private final List<KeyButton> buttons = new ArrayList<>();
    private final JPanel keys;
    private transient List<Command> shown;

    AnswerColumn(Sizes sizes, Texts texts) {
        super(new MigLayout(
                "insets 0, gap 0, fill, hidemode 3", "[grow,fill]", "[" + sizes.px(160) + "px!][grow,fill][]"));
        this.sizes = sizes;
        setOpaque(false);
        plate = new VerdictPlate(sizes, texts);
        body = new AnswerBody(sizes, texts);
        add(plate, "wrap, grow");
        // Its room stays when it is hidden: the keys are where the hand knows them.
        add(body, "wrap, grow, hmin 0, hidemode 0, gaptop " + sizes.px(8) + "px");
        keys = new JPanel(new MigLayout("insets 0, gap 0 " + sizes.px(8) + "px, fillx, flowy", "[grow,fill]"));
        keys.setOpaque(false);
        for (int i = 0; i < BUTTONS; i++) {
            KeyButton button = new KeyButton(sizes);
            buttons.add(button);
            keys.add(button);
        }
        add(keys, "grow, gaptop " + sizes.px(8) + "px");
    }

    /**
     * Shows a state.
     *
     * @param guide what it demands
     * @param marked items marked as not fine and not yet handed over
     * @param offers steps of this column
     */
    void show(DockState state, Guide guide, Set<VisualItem> marked, List<Offer> offers) {
        plate.show(guide);
        body.show(state, guide, marked);
        List<Command> next = offers.stream().map(Offer::command).toList();
        for (int i = 0; i < offers.size(); i++) {
            buttons.get(i).offer(offers.get(i));
        }
        if (!next.equals(shown)) {
            shown = next;
            layOutKeys(offers);
        }
    }

    /** Beside a paper that is looked at the sentences would only take room from its keys. */
    void wordAndKeysOnly(boolean only) {
        body.setVisible(!only);
    }

    /** Only when other keys come alive: a button taken out under a finger would never hear of its release. */
    private void layOutKeys(List<Offer> offers) {
        keys.removeAll();
        for (int i = 0; i < offers.size(); i++) {
            int height = switch (offers.get(i).kind()) {
                case PLAIN -> Sizes.TOUCH;
                case PRIMARY -> 80;
                case STOP -> 112;
            };
            keys.add(buttons.get(i), "growx, wmin 0, h " + sizes.px(height) + "px!");
        }
        keys.setVisible(!offers.isEmpty());
        revalidate();
        repaint();
    }
}
