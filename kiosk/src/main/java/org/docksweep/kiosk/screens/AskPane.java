package org.docksweep.kiosk.screens;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.JComponent;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;

/**
 * One question at a time: the large word and the sentence on the left, the keys on the right, below them where the answer is typed.
 * Signing on and the set-up walk are shown by it. Lives on the event thread.
 */
final class AskPane extends JPanel {
    private static final long serialVersionUID = 1;

    private final VerdictPlate plate;
    private final AskCard card;
    private final KeyPad keys;
    private final ScanField field;
    private final PinField pin;
    private final NoticePanel notice;
    private final JPanel bottom;
    private final transient Map<Command, Offer> alive = new EnumMap<>(Command.class);
    private transient JComponent typed;

    AskPane(Sizes sizes, Texts texts, Consumer<String> entered) {
        super(new MigLayout(
                "insets " + sizes.px(8) + "px, gap 0 " + sizes.px(8) + "px, fill",
                "[grow,fill]",
                "[grow,fill][" + sizes.px(80) + "px!]"));
        setBackground(Look.color("ground"));
        int gap = sizes.px(8);
        plate = new VerdictPlate(sizes, texts);
        card = new AskCard(sizes, texts);
        keys = new KeyPad(sizes);
        field = new ScanField(sizes, texts, entered);
        // An address of a service is longer than a tag.
        field.setFont(sizes.bold(22));
        pin = new PinField(sizes, texts, entered);
        notice = new NoticePanel(sizes, texts);
        JPanel body =
                new JPanel(new MigLayout("insets 0, gap " + gap + "px 0, fill", "[grow,fill][fill]", "[grow,fill]"));
        body.setOpaque(false);
        JPanel left = new JPanel(new MigLayout(
                "insets 0, gap 0 " + gap + "px, fill", "[grow,fill]", "[" + sizes.px(160) + "px!][grow,fill]"));
        left.setOpaque(false);
        left.add(plate, "wrap, grow, wmin 0");
        left.add(card, "grow, wmin 0, hmin 0");
        body.add(left, "grow, wmin 0, hmin 0");
        JPanel right = new JPanel(new MigLayout("insets 0, gap 0, fillx", "[grow,fill]", "[]"));
        right.setOpaque(false);
        right.add(keys, "growx, wmin 0");
        body.add(right, "w " + sizes.px(376) + "px!, growy, hmin 0");
        add(body, "wrap, grow, hmin 0");
        bottom = new JPanel(new MigLayout(
                "insets 0, gap " + gap + "px 0, fill, hidemode 3",
                "[" + sizes.px(480) + "px!,fill][grow,fill]",
                "[grow,fill]"));
        bottom.setOpaque(false);
        bottom.add(field, "cell 0 0, grow");
        bottom.add(pin, "cell 0 0, grow");
        bottom.add(notice, "cell 1 0, grow, wmin 0, hmin 0");
        add(bottom, "grow");
        typed = field;
        pin.setVisible(false);
    }

    /** Shows a question. */
    void show(Asked asked) {
        plate.show(asked.guide());
        card.show(asked);
        alive.clear();
        asked.offers().forEach(offer -> alive.put(offer.command(), offer));
        keys.show(asked.offers());
        notice.show(asked.message(), java.util.List.of(), Optional.empty());
        field.ask(asked.hint());
        pin.ask(asked.hint());
        typeInto(asked.secret() ? pin : field);
        // Where nothing is asked there is nothing to type into.
        typed.setVisible(!asked.hint().isEmpty());
    }

    /** Puts a text where the answer is typed, to be changed or sent as it is. */
    void suggest(String text) {
        field.setText(text);
        field.selectAll();
    }

    /** What is secret goes where nobody can read it. */
    private void typeInto(JComponent next) {
        if (next == typed) {
            return;
        }
        boolean hadFocus = typed.isFocusOwner();
        typed = next;
        field.setText("");
        pin.setText("");
        field.setVisible(next == field);
        pin.setVisible(next == pin);
        bottom.revalidate();
        if (hadFocus) {
            next.requestFocusInWindow();
        }
    }

    JComponent keyTarget() {
        return typed;
    }

    /**
     * Does what a key stands for, if it is alive now.
     *
     * @return whether it was
     */
    boolean perform(Command command) {
        Offer offer = alive.get(command);
        if (offer != null) {
            offer.action().run();
        }
        return offer != null;
    }
}
