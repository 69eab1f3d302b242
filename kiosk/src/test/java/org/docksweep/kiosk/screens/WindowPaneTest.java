package org.docksweep.kiosk.screens;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.mockito.Mockito.mock;
import static org.mockito.Mockito.verify;
import static org.mockito.Mockito.verifyNoInteractions;

import java.awt.Component;
import java.awt.Container;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import javax.swing.JComponent;
import javax.swing.JTextField;
import org.docksweep.kiosk.dock.DockActions;
import org.docksweep.kiosk.dock.DockState;
import org.junit.jupiter.api.Test;

class WindowPaneTest {
    private final DockActions actions = mock(DockActions.class);
    private final List<Command> heard = new ArrayList<>();
    private final List<Boolean> ups = new ArrayList<>();

    /** A page that notes what it hears. */
    private Page page(PageName name) {
        JTextField line = new JTextField();
        return new Page() {
            @Override
            public PageName name() {
                return name;
            }

            @Override
            public JComponent component() {
                return line;
            }

            @Override
            public JComponent keyTarget() {
                return line;
            }

            @Override
            public boolean perform(Command command) {
                return heard.add(command);
            }

            @Override
            public void shown(boolean up) {
                ups.add(up);
            }
        };
    }

    private void window(Consumer<WindowPane> use, PageName... others) {
        GalleryPane.onEventThread(() -> {
            GalleryPane.install(new ScreenSettings(Theme.DARK, 1, Locale.ENGLISH, GalleryPane.ZONE));
            Sizes sizes = new Sizes(1);
            Texts texts = new SampleTexts(Locale.ENGLISH, GalleryPane.ZONE, 0);
            DockState ready = SampleStates.named("ready");
            KioskPane dock = new KioskPane(actions, ready, SampleHouse.MODELS, sizes, texts);
            List<Page> pages = List.of(others).stream().map(this::page).toList();
            use.accept(new WindowPane(actions, dock, pages, ready, sizes, texts));
        });
    }

    private static List<String> barLabels(Container container) {
        List<String> labels = new ArrayList<>();
        for (Component child : container.getComponents()) {
            if (child instanceof PageBar bar) {
                collect(bar, labels);
            }
        }
        return labels;
    }

    private static void collect(Container container, List<String> labels) {
        for (Component child : container.getComponents()) {
            if (child instanceof KeyButton button) {
                labels.add(
                        button.offer().label() + " " + button.offer().command().cap());
            } else if (child instanceof Container inner) {
                collect(inner, labels);
            }
        }
    }

    @Test
    void offersOnlyThePagesThatAreThere() {
        window(
                pane -> assertThat(barLabels(pane)).containsExactly("Dock Ctrl F1", "Fleet Ctrl F3", "Rig Ctrl F4"),
                PageName.RIG,
                PageName.FLEET);
    }

    @Test
    void hasNoBarForTheDockPageAlone() {
        window(pane -> {
            assertThat(barLabels(pane)).isEmpty();
            assertThat(pane.perform(Command.PAGE_DOCK)).isFalse();
        });
    }

    @Test
    void changesThePageByItsKeyAndSendsTypedTextThere() {
        window(
                pane -> {
                    assertThat(pane.perform(Command.PAGE_RIG)).isTrue();

                    assertThat(pane.page()).isEqualTo(PageName.RIG);
                    assertThat(pane.keyTarget()).isNotSameAs(pane.dock().scanField());
                    pane.perform(Command.PAGE_DOCK);
                    assertThat(pane.keyTarget()).isSameAs(pane.dock().scanField());
                },
                PageName.RIG);

        assertThat(ups).containsExactly(true, false);
    }

    @Test
    void ignoresTheKeyOfAPageItHasNot() {
        window(
                pane -> {
                    pane.perform(Command.PAGE_BENCH);

                    assertThat(pane.page()).isEqualTo(PageName.DOCK);
                },
                PageName.RIG);
    }

    @Test
    void stopsTheDockAndThePageWhicheverIsUp() {
        window(
                pane -> {
                    pane.perform(Command.PAGE_RIG);
                    pane.perform(Command.STOP);
                },
                PageName.RIG);

        verify(actions).stop();
        assertThat(heard).containsExactly(Command.STOP);
    }

    @Test
    void keepsKeysOfTheDockFromOtherPages() {
        window(
                pane -> {
                    pane.perform(Command.PAGE_RIG);
                    pane.perform(Command.NEXT);
                    pane.perform(Command.CLOSE_LIST);
                },
                PageName.RIG);

        verifyNoInteractions(actions);
        assertThat(heard).containsExactly(Command.NEXT, Command.CLOSE_LIST);
    }

    @Test
    void refusesTwoPagesOfOneName() {
        GalleryPane.onEventThread(() -> assertThatIllegalArgumentException()
                .isThrownBy(() -> window(pane -> {}, PageName.RIG, PageName.RIG))
                .withMessageContaining("RIG"));
    }
}
