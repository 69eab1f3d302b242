package org.docksweep.kiosk.screens;

import static org.assertj.core.api.Assertions.assertThat;
import static org.mockito.Mockito.mock;
import static org.mockito.Mockito.never;
import static org.mockito.Mockito.verify;
import static org.mockito.Mockito.when;

import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.event.KeyEvent;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.ResourceBundle;
import java.util.function.Consumer;
import java.util.stream.Stream;
import javax.swing.JPasswordField;
import javax.swing.JTextField;
import org.docksweep.fleet.Reason;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.dock.DockActions;
import org.docksweep.kiosk.people.SignOnDesk;
import org.docksweep.kiosk.people.SignOnState;
import org.docksweep.kiosk.people.SignOnState.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Signing on as it stands before the pages of a window, in every state, without a display. */
class SignOnPageTest {
    private static final double LONGER = 0.35;
    private static final Dimension FRAMED = new Dimension(1278, 770);

    private final DockActions actions = mock(DockActions.class);
    private final SignOnDesk people = mock(SignOnDesk.class);

    private WindowPane window(SignOnState state, String dockState, ScreenSettings settings, double longer) {
        when(people.state()).thenReturn(state);
        Sizes sizes = new Sizes(settings.scale());
        Texts texts = new SampleTexts(settings.locale(), settings.zone(), longer);
        KioskPane dock = new KioskPane(actions, SampleStates.named(dockState), SampleHouse.MODELS, sizes, texts);
        WindowPane pane = new WindowPane(
                actions,
                dock,
                List.of(),
                SampleStates.named(dockState),
                sizes,
                texts,
                new Around(Optional.of(people), Optional.of(() -> {}), Optional.of(() -> {}), Optional.empty()));
        pane.show(SampleStates.named(dockState));
        return pane;
    }

    private void use(SignOnState state, String dockState, Consumer<WindowPane> use) {
        GalleryPane.onEventThread(() -> {
            ScreenSettings settings = new ScreenSettings(Theme.DARK, 1, Locale.ENGLISH, GalleryPane.ZONE);
            GalleryPane.install(settings);
            use.accept(window(state, dockState, settings, 0));
        });
    }

    private List<String> faults(SignOnState state, ScreenSettings settings, double longer, Dimension size) {
        return GalleryPane.write(
                () -> window(state, "sweep", settings, longer),
                settings,
                size,
                painted -> PageFaults.of(painted.components(), settings.scale()));
    }

    static Stream<Arguments> waysToShow() {
        List<Arguments> ways = new ArrayList<>();
        for (Theme theme : Theme.values()) {
            for (double scale : new double[] {1, 2}) {
                for (Locale locale : new Locale[] {Locale.ENGLISH, Locale.GERMAN}) {
                    SampleSignOn.all().keySet().forEach(name -> ways.add(Arguments.of(name, theme, scale, locale)));
                }
            }
        }
        return ways.stream();
    }

    @ParameterizedTest
    @MethodSource("waysToShow")
    void givesEveryTextItsRoom(String name, Theme theme, double scale, Locale locale) {
        assertThat(faults(
                        SampleSignOn.all().get(name),
                        new ScreenSettings(theme, scale, locale, GalleryPane.ZONE),
                        0,
                        FRAMED))
                .isEmpty();
    }

    static Stream<String> names() {
        return SampleSignOn.all().keySet().stream();
    }

    @ParameterizedTest
    @MethodSource("names")
    void hasRoomForLongerLanguages(String name) {
        ScreenSettings settings = new ScreenSettings(Theme.LIGHT, 1, Locale.ENGLISH, GalleryPane.ZONE);

        assertThat(faults(SampleSignOn.all().get(name), settings, LONGER, FRAMED))
                .isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "de"})
    void hasRoomForEverySentence(String language) {
        ScreenSettings settings = new ScreenSettings(Theme.LIGHT, 1, Locale.forLanguageTag(language), GalleryPane.ZONE);
        List<String> keys = ResourceBundle.getBundle("org.docksweep.fleet.reasons", settings.locale()).keySet().stream()
                .filter(key -> key.startsWith("people-"))
                .toList();
        assertThat(keys).isNotEmpty();
        for (String key : keys) {
            SignOnState base = SampleSignOn.all().get("locked");
            SignOnState told = new SignOnState(
                    base.stage(),
                    base.person(),
                    true,
                    Optional.empty(),
                    base.known(),
                    base.held(),
                    Optional.of(new SignOnState.Message(ReadingState.FAULT, Reason.of(key, "Jorunn Aas-Lindqvist"))),
                    false);

            assertThat(faults(told, settings, 0, FRAMED)).as(key).isEmpty();
        }
    }

    @Test
    void barsThePagesButNotStop() {
        use(SampleSignOn.all().get("locked"), "sweep", pane -> {
            assertThat(pane.perform(Command.NEXT)).isFalse();
            assertThat(pane.perform(Command.HOLD)).isFalse();
            pane.perform(Command.STOP);
            assertThat(pane.keyTarget())
                    .isInstanceOf(ScanField.class)
                    .isNotSameAs(pane.dock().scanField());
        });

        verify(actions).stop();
        verify(actions, never()).holdForPerson();
        // While a sweep sounds, the key silences it and does nothing else.
        verify(people, never()).back();
    }

    @Test
    void namesStopOnTheScreenWhileASweepRunsBehindIt() {
        use(SampleSignOn.all().get("locked"), "sweep", pane -> {
            KeyButton stop = buttons(pane).stream()
                    .filter(b -> b.offer().command() == Command.STOP)
                    .findFirst()
                    .orElseThrow();
            stop.doClick(0);
        });

        verify(actions).stop();
    }

    @Test
    void hidesThePinAndHandsItOverOnce() {
        use(SampleSignOn.all().get("pin"), "ready", pane -> {
            JPasswordField field = (JPasswordField) pane.keyTarget();
            assertThat(field.echoCharIsSet()).isTrue();
            field.setText("580317");
            field.postActionEvent();
            assertThat(field.getPassword()).isEmpty();
        });

        verify(people).typed("580317");
    }

    @Test
    void choosesSomebodyByTheKeyAtTheName() {
        use(
                SampleSignOn.all().get("left-alone"),
                "ready",
                pane -> assertThat(pane.perform(Command.CHOICE_3)).isTrue());

        verify(people).choose(2);
    }

    @Test
    void locksSignsOffAndGoesBackByKeys() {
        use(SampleSignOn.all().get("who"), "ready", pane -> {
            pane.perform(Command.NOTICE_1);
            pane.perform(Command.NOTICE_2);
            pane.perform(Command.HOLD);
        });

        verify(people).lock();
        verify(people).signOff();
        verify(people).back();
    }

    @Test
    void asksWhoWorksByItsKey() {
        use(
                SampleSignOn.working("Ines Falk"),
                "ready",
                pane -> assertThat(pane.perform(Command.PERSON)).isTrue());

        verify(people).ask();
    }

    @Test
    void takesABadgeOffThePageItWasScannedOn() {
        when(people.isBadge("B-0077")).thenReturn(true);
        use(SampleSignOn.working("Ines Falk"), "look", pane -> {
            JTextField line = pane.dock().scanField();
            line.setText("B-0077");
            assertThat(new KeyRouter(pane).dispatchKeyEvent(enter(line))).isTrue();
            assertThat(line.getText()).isEmpty();

            line.setText("MCH-000117");
            assertThat(pane.badgeEntered()).isFalse();
        });

        verify(people).typed("B-0077");
        verify(actions, never()).scan("B-0077");
    }

    private static KeyEvent enter(Component source) {
        return new KeyEvent(source, KeyEvent.KEY_PRESSED, 0, 0, KeyEvent.VK_ENTER, '\n');
    }

    @Test
    void comesAndGoesWithTheState() {
        use(SampleSignOn.working("Ines Falk"), "look", pane -> {
            assertThat(pane.keyTarget()).isSameAs(pane.dock().scanField());
            pane.show(SampleSignOn.all().get("locked"));
            assertThat(pane.keyTarget()).isNotSameAs(pane.dock().scanField());
            assertThat(pane.dock().isVisible()).isFalse();
            pane.show(SampleSignOn.working("Toma Reyl"));
            assertThat(pane.keyTarget()).isSameAs(pane.dock().scanField());
        });
        assertThat(SampleSignOn.working("Ines Falk").stage()).isEqualTo(Stage.WORK);
    }

    private static List<KeyButton> buttons(Container container) {
        List<KeyButton> found = new ArrayList<>();
        for (Component child : container.getComponents()) {
            if (child instanceof KeyButton button && child.isVisible()) {
                found.add(button);
            } else if (child instanceof Container inner && child.isVisible()) {
                found.addAll(buttons(inner));
            }
        }
        return found;
    }

    @Test
    void paintsThePictures() throws Exception {
        String folder = System.getProperty("docksweep.gallery");
        for (String name :
                folder == null ? List.of("locked") : List.of("first", "locked", "who", "pin", "pin-offline")) {
            for (ScreenSettings settings : GalleryPane.wanted()) {
                String file = GalleryPane.name("people", name, settings);
                GalleryPane.paint(
                        () -> window(SampleSignOn.all().get(name), "ready", settings, 0), settings, painted -> {
                            assertThat(painted.image().getRGB(5, 5)).isNotZero();
                            if (folder != null) {
                                try {
                                    SmallPng.write(
                                            painted.image(),
                                            java.nio.file.Path.of(folder).resolve(file));
                                } catch (java.io.IOException e) {
                                    throw new java.io.UncheckedIOException(e);
                                }
                            }
                            return null;
                        });
            }
        }
    }
}
