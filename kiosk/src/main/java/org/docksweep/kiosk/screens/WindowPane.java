package org.docksweep.kiosk.screens;

import java.awt.BorderLayout;
import java.awt.CardLayout;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.swing.JComponent;
import javax.swing.JPanel;
import org.docksweep.kiosk.dock.DockActions;
import org.docksweep.kiosk.dock.DockState;
import org.docksweep.kiosk.people.SignOnDesk;
import org.docksweep.kiosk.people.SignOnState;
import org.docksweep.kiosk.practice.PracticeTruck;

/**
 * Everything in the window: the pages, of which one is shown, and the bar that changes between them. A window with the
 * dock page alone has no bar. Over every other page stands the same strip as on the dock page. Stop reaches the dock and
 * the page that is shown. While the kiosk is locked or asks who works here, the sign-on page stands before all of them. Lives on the
 * event thread.
 */
final class WindowPane extends JPanel implements KeyHome {
    private static final long serialVersionUID = 1;
    private static final String SIGN_ON = "SIGN_ON";

    private final transient DockActions actions;
    private final transient KioskPane dock;
    private final transient Map<PageName, Page> pages = new EnumMap<>(PageName.class);
    private final transient List<StripPanel> strips = new ArrayList<>();
    private final CardLayout cards = new CardLayout();
    private final JPanel deck = new JPanel(cards);
    private final transient Around around;
    private final transient SignOnPage signOn;
    private final transient List<Offer> others;
    private final PracticeBand band;
    private final PageBar bar;
    private transient Optional<PracticeTruck.Cabinet> offTheTruck = Optional.empty();
    private transient Page current;

    WindowPane(DockActions actions, KioskPane dock, List<Page> others, DockState initial, Sizes sizes, Texts texts) {
        this(actions, dock, others, initial, sizes, texts, Around.NONE);
    }

    WindowPane(
            DockActions actions,
            KioskPane dock,
            List<Page> otherPages,
            DockState initial,
            Sizes sizes,
            Texts texts,
            Around around) {
        super(new BorderLayout());
        this.actions = actions;
        this.around = around;
        this.dock = dock;
        current = new DockPage(dock);
        pages.put(PageName.DOCK, current);
        for (Page page : otherPages) {
            if (pages.put(page.name(), page) != null) {
                throw new IllegalArgumentException("the window has two pages " + page.name());
            }
        }
        pages.forEach((name, page) ->
                deck.add(name == PageName.DOCK ? dock : underStrip(page.component(), sizes, texts), name.name()));
        add(deck, BorderLayout.CENTER);
        others = offers(texts);
        bar = new PageBar(pages.size() > 1 ? List.copyOf(pages.keySet()) : List.of(), others, sizes, texts, this::open);
        bar.show(PageName.DOCK);
        if (pages.size() > 1 || !others.isEmpty()) {
            add(bar, BorderLayout.WEST);
        }
        setBackground(Look.color("ground"));
        signOn = around.people()
                .map(people -> new SignOnPage(people, people.state(), this::stop, sizes, texts))
                .orElse(null);
        if (signOn != null) {
            deck.add(underStrip(signOn.component(), sizes, texts), SIGN_ON);
            signOnChanged();
        }
        strips.forEach(strip -> strip.show(initial.strip()));
        band = new PracticeBand(sizes, texts);
        if (around.truck().isPresent()) {
            add(band, BorderLayout.NORTH);
            showTruck(initial);
        }
    }

    private void showTruck(DockState state) {
        around.truck().ifPresent(truck -> {
            offTheTruck = truck.next(state);
            band.show(offTheTruck);
        });
    }

    private List<Offer> offers(Texts texts) {
        List<Offer> offers = new ArrayList<>();
        around.people()
                .ifPresent(p ->
                        offers.add(new Offer(Command.PERSON, Offer.Kind.PLAIN, texts.say("around.PERSON"), p::ask)));
        around.practice()
                .ifPresent(p -> offers.add(new Offer(
                        Command.PRACTICE,
                        Offer.Kind.PLAIN,
                        texts.say(around.truck().isPresent() ? "around.PRACTICE_END" : "around.PRACTICE"),
                        p)));
        around.setUp()
                .ifPresent(s -> offers.add(new Offer(Command.SET_UP, Offer.Kind.PLAIN, texts.say("around.SET_UP"), s)));
        return offers;
    }

    private JComponent underStrip(JComponent component, Sizes sizes, Texts texts) {
        StripPanel strip = new StripPanel(sizes, texts);
        strip.setPreferredSize(new java.awt.Dimension(0, sizes.px(48)));
        strips.add(strip);
        JPanel whole = new JPanel(new BorderLayout());
        whole.setBackground(Look.color("ground"));
        whole.add(strip, BorderLayout.NORTH);
        whole.add(component, BorderLayout.CENTER);
        return whole;
    }

    /** Shows a state of the dock, whichever page is up. */
    void show(DockState state) {
        dock.show(state);
        strips.forEach(strip -> strip.show(state.strip()));
        showTruck(state);
        if (signOn != null) {
            signOn.sounding(Guide.sounding(state.phase()));
        }
    }

    /** Shows who is signed on, or that the kiosk is locked. */
    void show(SignOnState state) {
        boolean typing = keyTarget().isFocusOwner();
        signOn.show(state);
        signOnChanged();
        if (typing) {
            keyTarget().requestFocusInWindow();
        }
    }

    private void signOnChanged() {
        bar.setVisible(!signOn.isUp());
        cards.show(deck, signOn.isUp() ? SIGN_ON : current.name().name());
    }

    private boolean isBarred() {
        return signOn != null && signOn.isUp();
    }

    @Override
    public void touched() {
        around.people().ifPresent(SignOnDesk::touched);
    }

    @Override
    public boolean badgeEntered() {
        if (signOn == null || isBarred() || current.wantsBadge() || !(keyTarget() instanceof TypedText line)) {
            return false;
        }
        SignOnDesk people = around.people().orElseThrow();
        String text = line.typedText();
        if (!people.isBadge(text)) {
            return false;
        }
        line.clear();
        people.typed(text);
        return true;
    }

    KioskPane dock() {
        return dock;
    }

    @Override
    public JComponent keyTarget() {
        return isBarred() ? signOn.keyTarget() : current.keyTarget();
    }

    /** Name of the page that is shown. */
    PageName page() {
        return current.name();
    }

    /** Brings a page up; does nothing when the window has no such page. */
    void open(PageName name) {
        Page next = pages.get(name);
        if (next == null || next == current || isBarred()) {
            return;
        }
        current.shown(false);
        current = next;
        cards.show(deck, name.name());
        bar.show(name);
        next.shown(true);
        next.keyTarget().requestFocusInWindow();
    }

    @Override
    public boolean perform(Command command) {
        if (isBarred()) {
            if (command == Command.STOP) {
                stop();
            }
            return signOn.perform(command);
        }
        Optional<Offer> other =
                others.stream().filter(o -> o.command() == command).findFirst();
        if (other.isPresent()) {
            other.get().action().run();
            return true;
        }
        for (Page page : pages.values()) {
            if (page.name().command() == command && pages.size() > 1) {
                open(page.name());
                return true;
            }
        }
        if (command == Command.PRACTICE_SCAN && around.truck().isPresent()) {
            offTheTruck.ifPresent(c -> actions.scan(c.label().value()));
            return true;
        }
        if (command == Command.STOP) {
            stop();
            return true;
        }
        return current.perform(command);
    }

    /** Whatever sounds, and whoever began it; also while the kiosk is locked. */
    private void stop() {
        if (current.name() != PageName.DOCK) {
            actions.stop();
        }
        current.perform(Command.STOP);
    }
}
