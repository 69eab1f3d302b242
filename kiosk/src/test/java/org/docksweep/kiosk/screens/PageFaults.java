package org.docksweep.kiosk.screens;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import java.awt.Container;
import java.awt.Rectangle;
import java.util.ArrayList;
import java.util.List;
import javax.swing.AbstractButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.text.JTextComponent;

/**
 * What is wrong with a page that was laid out and painted: text cut or covered, parts outside their parent, small keys, parts that a
 * screen reader cannot name or tell apart.
 */
final class PageFaults {
    /** House rule: what is touched with gloves is at least this wide and high. */
    private static final double TOUCH_MM = 15;

    private static final double PX_PER_MM = 96 / 25.4;

    private PageFaults() {}

    static List<String> of(List<Component> components, double scale) {
        List<String> faults = new ArrayList<>();
        for (Component component : components) {
            if (component instanceof WritesText writer) {
                writer.shortfalls().forEach(s -> faults.add(component.getClass().getSimpleName() + ": " + s));
                overlaps(component, writer.written(), faults);
            }
            // Text outside the one that records what did not fit would go unseen here.
            assertThat(component).isNotInstanceOf(JLabel.class);
            outside(component, faults);
            if (spoken(component) && name(component).isBlank()) {
                faults.add(component.getClass().getSimpleName() + " has no name for a screen reader");
            }
            if (pressedOrTyped(component)) {
                alike(component, faults);
            }
            if (component instanceof AbstractButton button
                    && Math.min(button.getWidth(), button.getHeight()) < TOUCH_MM * PX_PER_MM * scale) {
                faults.add(button.getAccessibleContext().getAccessibleName() + " is too small to touch: "
                        + button.getSize());
            }
        }
        return faults;
    }

    /** Whoever can press, type into or come to it by keys must hear what it is; and whoever cannot see must hear what is painted. */
    private static boolean spoken(Component component) {
        return pressedOrTyped(component)
                || component instanceof WritesText
                || component.isFocusable()
                        && component.getClass() != JPanel.class
                        && component instanceof Container inner
                        && inner.getComponentCount() == 0;
    }

    private static boolean pressedOrTyped(Component component) {
        return component instanceof AbstractButton
                || component instanceof JTextComponent
                || component instanceof TypedText;
    }

    private static String name(Component component) {
        String name = component.getAccessibleContext() == null
                ? null
                : component.getAccessibleContext().getAccessibleName();
        return name == null ? "" : name;
    }

    /** Two siblings of one name cannot be told apart by ear; each such pair is found once. */
    private static void alike(Component component, List<String> faults) {
        Container parent = component.getParent();
        for (Component sibling : parent.getComponents()) {
            if (sibling == component) {
                return;
            }
            if (!name(component).isBlank()
                    && sibling.isVisible()
                    && pressedOrTyped(sibling)
                    && name(sibling).equals(name(component))) {
                faults.add("two siblings are called \"" + name(component) + "\"");
            }
        }
    }

    private static void overlaps(Component component, List<Ink.Written> written, List<String> faults) {
        for (int i = 0; i < written.size(); i++) {
            Rectangle box = written.get(i).box();
            if (!new Rectangle(component.getSize()).contains(box)) {
                faults.add(component.getClass().getSimpleName() + ": \""
                        + written.get(i).text() + "\" at " + box + " leaves " + component.getSize());
            }
            for (int j = 0; j < i; j++) {
                if (box.intersects(written.get(j).box())) {
                    faults.add(component.getClass().getSimpleName() + ": \""
                            + written.get(i).text() + "\" covers \""
                            + written.get(j).text() + "\"");
                }
            }
        }
    }

    private static void outside(Component component, List<String> faults) {
        if (component.getParent() != null
                && component.getWidth() > 0
                && !new Rectangle(component.getParent().getSize()).contains(component.getBounds())) {
            faults.add(component.getClass().getSimpleName() + " at " + component.getBounds() + " leaves its parent "
                    + component.getParent().getSize());
        }
    }
}
