package org.docksweep.kiosk.screens;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.swing.JComponent;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import org.docksweep.kiosk.dock.DockState;
import org.docksweep.kiosk.teaching.ModelStanding;
import org.docksweep.kiosk.teaching.TeachingActions;
import org.docksweep.kiosk.teaching.TeachingState;

/**
 * The fleet page: the models on the left, in the middle the marked one, the drawing being filled in, or the lesson with the curve of the
 * unit swept last; on the right what is asked and the keys. Lives on the event thread.
 */
final class FleetPage implements Page {
    private final Sizes sizes;
    private final TeachingActions actions;
    private final Texts texts;
    private final JPanel whole;
    private final JPanel body;
    private final JPanel bottom;
    private final FleetListPanel list;
    private final JPanel middle = new JPanel();
    private final FrontPanel front;
    private final LessonPanel lesson;
    private final CurvePanel curve;
    private final FleetColumn column;
    private final ScanField scanField;
    private final PinField pinField;
    private final NoticePanel notice;
    private final Map<Command, Offer> alive = new EnumMap<>(Command.class);
    private TeachingState state;
    private List<JComponent> inMiddle = List.of();
    private JComponent typed;

    FleetPage(TeachingActions actions, TeachingState initial, Sizes sizes, Texts texts) {
        this.sizes = sizes;
        this.texts = texts;
        this.actions = actions;
        list = new FleetListPanel(sizes, texts, actions::mark);
        front = new FrontPanel(sizes, texts);
        lesson = new LessonPanel(sizes, texts);
        curve = new CurvePanel(sizes, texts);
        column = new FleetColumn(sizes, texts);
        scanField = new ScanField(sizes, texts, actions::scan);
        pinField = new PinField(sizes, texts, actions::scan);
        notice = new NoticePanel(sizes, texts);
        middle.setOpaque(false);
        int gap = sizes.px(8);
        whole = new JPanel(new MigLayout(
                "insets " + gap + "px, gap 0 " + gap + "px, fill",
                "[grow,fill]",
                "[grow,fill][" + sizes.px(80) + "px!]"));
        whole.setBackground(Look.color("ground"));
        body = new JPanel(new MigLayout(
                "insets 0, gap " + gap + "px 0, fill, hidemode 3", "[fill][grow,fill][fill]", "[grow,fill]"));
        body.setOpaque(false);
        body.add(list, "cell 0 0, growy, hmin 0, w " + sizes.px(296) + "px!");
        body.add(middle, "cell 1 0, grow, wmin 0, hmin 0");
        body.add(column, "cell 2 0, growy, hmin 0, w " + sizes.px(376) + "px!");
        whole.add(body, "wrap, grow, hmin 0");
        bottom = new JPanel(new MigLayout(
                "insets 0, gap " + gap + "px 0, fill, hidemode 3",
                "[" + sizes.px(384) + "px!,fill][grow,fill]",
                "[grow,fill]"));
        bottom.setOpaque(false);
        bottom.add(scanField, "cell 0 0, grow");
        bottom.add(pinField, "cell 0 0, grow");
        bottom.add(notice, "cell 1 0, grow, wmin 0, hmin 0");
        whole.add(bottom, "grow");
        show(initial);
    }

    @Override
    public PageName name() {
        return PageName.FLEET;
    }

    @Override
    public JComponent component() {
        return whole;
    }

    /** A manager signs a lesson with the badge; nobody takes over by that. */
    @Override
    public boolean wantsBadge() {
        return state.activity() == TeachingState.Activity.SIGN_ON;
    }

    @Override
    public JComponent keyTarget() {
        return typed;
    }

    @Override
    public void shown(boolean up) {
        if (up) {
            actions.refresh();
        } else if (state.sweepShare().isPresent()) {
            // The dock needs the rig when the person has gone back to it.
            actions.stop();
        }
    }

    @Override
    public boolean perform(Command command) {
        switch (command) {
            case STOP -> actions.stop();
            case UP -> actions.mark(state.marked() - 1);
            case DOWN -> actions.mark(state.marked() + 1);
            default -> {
                Offer offer = alive.get(command);
                if (offer == null) {
                    return false;
                }
                offer.action().run();
            }
        }
        return true;
    }

    /** Shows a state. */
    void show(TeachingState next) {
        state = next;
        list.show(next);
        List<Offer> offers = FleetOffers.of(next, actions, texts);
        alive.clear();
        offers.forEach(offer -> alive.put(offer.command(), offer));
        column.show(next, offers);
        notice.show(
                next.message().map(m -> new DockState.Notice(m.state(), m.text(), List.of())),
                List.of(),
                Optional.empty());
        showFront(next);
        lesson.show(next.lesson());
        curve.show(next.lesson().flatMap(TeachingState.LessonAtHand::curve), false);
        layOutMiddle(
                switch (next.activity()) {
                    case MODELS, DRAWING -> List.of(front);
                    case UNITS, SIGN_ON -> List.of(lesson, curve);
                });
        typeInto(next.secret() ? pinField : scanField);
    }

    /** A PIN goes where nobody can read it. */
    private void typeInto(JComponent field) {
        if (field == typed) {
            return;
        }
        boolean hadFocus = typed != null && typed.isFocusOwner();
        typed = field;
        scanField.setVisible(field == scanField);
        pinField.setVisible(field == pinField);
        pinField.setText("");
        bottom.revalidate();
        if (hadFocus) {
            field.requestFocusInWindow();
        }
    }

    private void layOutMiddle(List<JComponent> next) {
        if (next.equals(inMiddle)) {
            return;
        }
        inMiddle = next;
        // The lesson needs the room of the list, which is of no use meanwhile.
        list.setVisible(!next.contains(lesson));
        middle.removeAll();
        middle.setLayout(new MigLayout(
                "insets 0, gap 0 " + sizes.px(8) + "px, fill, wrap 1",
                "[grow,fill]",
                next.size() == 1 ? "[grow,fill]" : "[grow 55,fill][grow 45,fill]"));
        for (JComponent component : next) {
            middle.add(component, "grow, wmin 0, hmin 0");
        }
        body.revalidate();
        body.repaint();
    }

    private void showFront(TeachingState next) {
        if (next.drawing().isPresent()) {
            TeachingState.Drawing d = next.drawing().get();
            front.show(
                    d.named() ? d.model().code() : texts.say("fleet.drawing.unnamed"),
                    d.model(),
                    FleetFacts.of(d, texts));
        } else if (next.marked() >= 0) {
            ModelStanding standing = next.models().get(next.marked());
            front.show(standing.model().name(), standing.model(), FleetFacts.of(standing, texts));
        } else {
            front.show("", null, List.of());
        }
    }
}
