package org.docksweep.kiosk.screens;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import java.util.List;
import javax.swing.JButton;
import javax.swing.JPanel;
import javax.swing.JTextField;
import org.junit.jupiter.api.Test;

/**
 * {@link PageFaults} finds what a screen reader cannot name or tell apart. Every page is held to it in every sample state, both languages
 * and both themes by the tests of room for text.
 */
class NamedForTheEarTest {
    @Test
    void findsAKeyAndALineWithoutAName() {
        JPanel panel = new JPanel();
        panel.add(named(new JButton(), ""));
        panel.add(named(new JTextField(), null));

        assertThat(faults(panel))
                .containsExactly(
                        "JButton has no name for a screen reader", "JTextField has no name for a screen reader");
    }

    @Test
    void findsTwoSiblingsOfOneName() {
        JPanel panel = new JPanel();
        panel.add(named(new JButton(), "Print"));
        panel.add(named(new JButton(), "Back"));
        panel.add(named(new JButton(), "Print"));

        assertThat(faults(panel)).containsExactly("two siblings are called \"Print\"");
    }

    @Test
    void letsTheSameNameStandInTwoParts() {
        JPanel panel = new JPanel();
        panel.add(named(new JButton(), "Back"));
        JPanel other = new JPanel();
        other.setSize(500, 500);
        other.add(named(new JButton(), "Back"));
        panel.add(other);

        assertThat(faults(panel)).isEmpty();
    }

    private static Component named(Component component, String name) {
        component.setSize(200, 200);
        component.getAccessibleContext().setAccessibleName(name);
        return component;
    }

    private static List<String> faults(JPanel panel) {
        panel.setSize(1000, 1000);
        return PageFaults.of(GalleryPane.componentsOf(panel), 1);
    }
}
