package org.docksweep.kiosk.screens;

import static org.assertj.core.api.Assertions.assertThat;
import static org.mockito.Mockito.mock;
import static org.mockito.Mockito.verify;

import java.awt.Dimension;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.ResourceBundle;
import java.util.stream.Stream;
import javax.swing.JPasswordField;
import javax.swing.JTextField;
import org.docksweep.fleet.Reason;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.setup.SetUpActions;
import org.docksweep.kiosk.setup.SetUpState;
import org.docksweep.kiosk.setup.SetUpState.Line;
import org.docksweep.kiosk.setup.SetUpState.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The set-up walk in every step, without a display. Pictures: {@code -Ddocksweep.gallery=../docs/images}. */
class SetUpPaneTest {
    private static final double LONGER = 0.35;
    private static final Dimension FRAMED = new Dimension(1278, 770);
    private static final List<Line> DONE = List.of(
            line(ReadingState.OK, "setup-done-service", "https://docksweep.marram-coast-hire.example:8470"),
            line(ReadingState.OK, "setup-done-token", "Marram Coast Hire", "64"),
            line(ReadingState.OK, "setup-done-number", "7"),
            line(ReadingState.WATCH, "setup-done-rig-later"),
            line(ReadingState.OK, "setup-done-folder", "/var/lib/docksweep/kiosk/papers"));

    private final SetUpActions actions = mock(SetUpActions.class);

    private static Line line(ReadingState state, String key, String... arguments) {
        return new Line(state, Reason.of(key, arguments));
    }

    private static Map<String, SetUpState> samples(String language) {
        Map<String, SetUpState> all = new LinkedHashMap<>();
        all.put("hello", state(Step.HELLO, language, 0, List.of(), List.of("English", "Deutsch"), null, false));
        all.put("again", state(Step.HELLO, language, 0, List.of(), List.of("English", "Deutsch"), null, true));
        all.put(
                "service",
                state(
                        Step.SERVICE,
                        language,
                        0,
                        List.of(),
                        List.of(),
                        line(ReadingState.FAULT, "setup-certificate-untrusted", "docksweep.marram-coast-hire.example"),
                        false));
        all.put(
                "token",
                state(
                        Step.TOKEN,
                        language,
                        1,
                        List.of(),
                        List.of(),
                        line(ReadingState.FAULT, "setup-token-refused"),
                        true));
        all.put("number", state(Step.NUMBER, language, 2, List.of(), List.of(), null, false));
        all.put(
                "rig",
                state(
                        Step.RIG,
                        language,
                        3,
                        List.of(
                                line(ReadingState.OK, "setup-device", "Two In Two Out [plughw:1,0]"),
                                line(ReadingState.NOT_JUDGED, "setup-device-other", "Built-in Audio Analog Stereo")),
                        List.of(),
                        null,
                        false));
        all.put(
                "printer",
                state(
                        Step.PRINTER,
                        language,
                        4,
                        List.of(
                                line(ReadingState.OK, "setup-printer", "Dock-Labels-100x150"),
                                line(ReadingState.WATCH, "setup-printer-not-accepting", "Office"),
                                line(ReadingState.OK, "setup-printer", "Third-Printer"),
                                line(ReadingState.OK, "setup-printer", "Fourth-Printer"),
                                line(ReadingState.OK, "setup-printer", "The-Large-Printer-In-The-Hall-Upstairs")),
                        List.of(
                                "Dock-Labels-100x150",
                                "Office",
                                "Third-Printer",
                                "Fourth-Printer",
                                "The-Large-Printer-In-The-Hall-Upstairs"),
                        null,
                        true));
        all.put("store", state(Step.STORE, language, 5, List.of(), List.of(), null, true));
        return all;
    }

    private static SetUpState state(
            Step step, String language, int done, List<Line> found, List<String> choices, Line message, boolean again) {
        return new SetUpState(
                step,
                language,
                DONE.subList(0, done),
                found,
                choices,
                step == Step.SERVICE ? "https://docksweep.marram-coast-hire.example:8470" : "",
                Optional.ofNullable(message),
                again,
                again,
                false);
    }

    private SetUpPane pane(SetUpState state, ScreenSettings settings, double longer) {
        return new SetUpPane(actions, state, new Sizes(settings.scale())) {
            private static final long serialVersionUID = 1;

            @Override
            Texts texts(String language) {
                return new SampleTexts(Locale.forLanguageTag(language), GalleryPane.ZONE, longer);
            }
        };
    }

    private List<String> faults(SetUpState state, ScreenSettings settings, double longer) {
        return GalleryPane.write(
                () -> pane(state, settings, longer),
                settings,
                FRAMED,
                painted -> PageFaults.of(painted.components(), settings.scale()));
    }

    private static ScreenSettings settings(Theme theme, double scale, String language) {
        return new ScreenSettings(theme, scale, Locale.forLanguageTag(language), GalleryPane.ZONE);
    }

    static Stream<Arguments> waysToShow() {
        List<Arguments> ways = new ArrayList<>();
        for (Theme theme : Theme.values()) {
            for (double scale : new double[] {1, 2}) {
                for (String language : new String[] {"en", "de"}) {
                    samples(language).keySet().forEach(name -> ways.add(Arguments.of(name, theme, scale, language)));
                }
            }
        }
        return ways.stream();
    }

    @ParameterizedTest
    @MethodSource("waysToShow")
    void givesEveryTextItsRoom(String name, Theme theme, double scale, String language) {
        assertThat(faults(samples(language).get(name), settings(theme, scale, language), 0))
                .isEmpty();
    }

    static Stream<String> names() {
        return samples("en").keySet().stream();
    }

    @ParameterizedTest
    @MethodSource("names")
    void hasRoomForLongerLanguages(String name) {
        assertThat(faults(samples("en").get(name), settings(Theme.LIGHT, 1, "en"), LONGER))
                .isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "de"})
    void hasRoomForEverySentence(String language) {
        List<String> keys =
                ResourceBundle.getBundle("org.docksweep.fleet.reasons", Locale.forLanguageTag(language))
                        .keySet()
                        .stream()
                        .filter(key -> key.startsWith("setup-"))
                        .toList();
        assertThat(keys).isNotEmpty();
        for (String key : keys) {
            Line told = line(ReadingState.FAULT, key, "https://docksweep.example:8470", "a reason in some words");
            assertThat(faults(
                            state(Step.SERVICE, language, 0, List.of(), List.of(), told, true),
                            settings(Theme.LIGHT, 1, language),
                            0))
                    .as(key)
                    .isEmpty();
        }
    }

    private void use(String name, java.util.function.Consumer<SetUpPane> use) {
        GalleryPane.onEventThread(() -> {
            ScreenSettings settings = settings(Theme.DARK, 1, "en");
            GalleryPane.install(settings);
            use.accept(pane(samples("en").get(name), settings, 0));
        });
    }

    @Test
    void isWalkedByKeysAlone() {
        use("hello", pane -> {
            assertThat(pane.perform(Command.CHOICE_2)).isTrue();
            assertThat(pane.perform(Command.NEXT)).isTrue();
            assertThat(pane.perform(Command.PRACTICE)).isTrue();
        });
        use("printer", pane -> {
            assertThat(pane.perform(Command.CHOICE_1)).isTrue();
            assertThat(pane.perform(Command.PRINT)).isTrue();
            assertThat(pane.perform(Command.HOLD)).isTrue();
            assertThat(pane.perform(Command.NOTICE_2)).isTrue();
        });

        verify(actions).choose(1);
        verify(actions).next();
        verify(actions).practise();
        verify(actions).choose(0);
        verify(actions).look();
        verify(actions).back();
        verify(actions).leave();
    }

    @Test
    void cannotBeLeftBeforeTheFirstSetUpButByClosingIt() {
        use("store", pane -> assertThat(pane.perform(Command.NOTICE_2)).isTrue());
        use("number", pane -> assertThat(pane.perform(Command.NOTICE_2)).isFalse());
    }

    @Test
    void hidesTheToken() {
        use("token", pane -> {
            JPasswordField field = (JPasswordField) pane.keyTarget();
            assertThat(field.echoCharIsSet()).isTrue();
            field.setText("a-token-0123456789");
            field.postActionEvent();
            assertThat(field.getPassword()).isEmpty();
        });

        verify(actions).typed("a-token-0123456789");
    }

    @Test
    void suggestsWhatIsKnownOnceAndLeavesWhatIsTypedAlone() {
        use("service", pane -> {
            JTextField field = (JTextField) pane.keyTarget();
            assertThat(field.getText()).startsWith("https://docksweep.marram");
            field.setText("https://other.example");
            pane.show(samples("en").get("service"));
            assertThat(field.getText()).isEqualTo("https://other.example");
        });
    }

    @Test
    void speaksTheLanguageThatIsChosen() {
        use("hello", pane -> {
            pane.show(samples("de").get("hello"));
            assertThat(pane.getComponent(0)).isInstanceOf(AskPane.class);
            assertThat(pane.getComponentCount()).isEqualTo(1);
            assertThat(pane.keyTarget().getAccessibleContext().getAccessibleName())
                    .isEqualTo("Die Tasten nehmen");
        });
    }

    @Test
    void paintsThePictures() {
        String folder = System.getProperty("docksweep.gallery");
        for (ScreenSettings settings : GalleryPane.wanted()) {
            samples(settings.locale().getLanguage())
                    .forEach((name, state) -> GalleryPane.paint(() -> pane(state, settings, 0), settings, painted -> {
                        assertThat(painted.image().getRGB(5, 5)).isNotZero();
                        if (folder != null) {
                            write(painted, Path.of(folder).resolve(GalleryPane.name("setup", name, settings)));
                        }
                        return null;
                    }));
        }
    }

    private static void write(GalleryPane.Painted painted, Path file) {
        try {
            SmallPng.write(painted.image(), file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
