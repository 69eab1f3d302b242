package org.docksweep.kiosk.screens;

import java.awt.BorderLayout;
import java.awt.CardLayout;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import javax.swing.JComponent;
import javax.swing.JPanel;
import org.docksweep.kiosk.dock.DockActions;
import org.docksweep.kiosk.dock.DockState;

/**
 * Everything in the window: the pages, of which one is shown, and the bar that changes between them. A window with the
 * dock page alone has no bar. Over every other page stands the same strip as on the dock page. Stop reaches the dock and
 * the page that is shown. Lives on the event thread.
 */
final class WindowPane extends JPanel {
    private static final long serialVersionUID = 1;

    private final transient DockActions actions;
    private final transient KioskPane dock;
    private final transient Map<PageName, Page> pages = new EnumMap<>(PageName.class);
    private final transient List<StripPanel> strips = new ArrayList<>();
    private final CardLayout cards = new CardLayout();
    private final JPanel deck = new JPanel(cards);
    private final PageBar bar;
    private transient Page current;

    WindowPane(DockActions actions, KioskPane dock, List<Page> others, DockState initial, Sizes sizes, Texts texts) {
        super(new BorderLayout());
        this.actions = actions;
        this.dock = dock;
        current = new DockPage(dock);
        pages.put(PageName.DOCK, current);
        for (Page page : others) {
            if (pages.put(page.name(), page) != null) {
                throw new IllegalArgumentException("the window has two pages " + page.name());
            }
        }
        pages.forEach(
                (name, page) -> deck.add(name == PageName.DOCK ? dock : underStrip(page, sizes, texts), name.name()));
        add(deck, BorderLayout.CENTER);
        bar = new PageBar(List.copyOf(pages.keySet()), sizes, texts, this::open);
        bar.show(PageName.DOCK);
        if (pages.size() > 1) {
            add(bar, BorderLayout.WEST);
        }
        setBackground(Look.color("ground"));
        strips.forEach(strip -> strip.show(initial.strip()));
    }

    private JComponent underStrip(Page page, Sizes sizes, Texts texts) {
        StripPanel strip = new StripPanel(sizes, texts);
        strip.setPreferredSize(new java.awt.Dimension(0, sizes.px(48)));
        strips.add(strip);
        JPanel whole = new JPanel(new BorderLayout());
        whole.setBackground(Look.color("ground"));
        whole.add(strip, BorderLayout.NORTH);
        whole.add(page.component(), BorderLayout.CENTER);
        return whole;
    }

    /** Shows a state of the dock, whichever page is up. */
    void show(DockState state) {
        dock.show(state);
        strips.forEach(strip -> strip.show(state.strip()));
    }

    KioskPane dock() {
        return dock;
    }

    /** Where typed text goes now. */
    JComponent keyTarget() {
        return current.keyTarget();
    }

    /** Name of the page that is shown. */
    PageName page() {
        return current.name();
    }

    /** Brings a page up; does nothing when the window has no such page. */
    void open(PageName name) {
        Page next = pages.get(name);
        if (next == null || next == current) {
            return;
        }
        current.shown(false);
        current = next;
        cards.show(deck, name.name());
        bar.show(name);
        next.shown(true);
        next.keyTarget().requestFocusInWindow();
    }

    /**
     * Does what a key stands for.
     *
     * @return whether it is alive now
     */
    boolean perform(Command command) {
        for (Page page : pages.values()) {
            if (page.name().command() == command && pages.size() > 1) {
                open(page.name());
                return true;
            }
        }
        if (command == Command.STOP && current.name() != PageName.DOCK) {
            // Whatever sounds, and whoever began it.
            actions.stop();
        }
        return current.perform(command);
    }
}
