package org.docksweep.kiosk.screens;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.io.IOException;
import java.io.InputStream;
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Contrast by the formula of WCAG 2.1, success criterion 1.4.3: (L1 + 0.05) / (L2 + 0.05) of relative luminances. */
class ColoursTest {
    /** House rule for the answer; also WCAG 2.1 level AAA (1.4.6). */
    private static final double ANSWER_CONTRAST = 7;

    /** WCAG 2.1 level AA for text (1.4.3). */
    private static final double TEXT_CONTRAST = 4.5;

    /** A red-green blind eye still tells luminances apart; the two plates differ at least this much (own choice). */
    private static final double PASS_TO_FAIL = 2.5;

    private static void install(Theme theme) {
        GalleryPane.onEventThread(
                () -> GalleryPane.install(new ScreenSettings(theme, 1, Locale.ENGLISH, GalleryPane.ZONE)));
    }

    private static double luminance(Color color) {
        return 0.2126 * linear(color.getRed()) + 0.7152 * linear(color.getGreen()) + 0.0722 * linear(color.getBlue());
    }

    private static double linear(int value) {
        double c = value / 255.0;
        return c <= 0.03928 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
    }

    private static double contrast(Color a, Color b) {
        double la = luminance(a);
        double lb = luminance(b);
        return (Math.max(la, lb) + 0.05) / (Math.min(la, lb) + 0.05);
    }

    @Test
    void contrastOfBlackOnWhiteIs21() {
        assertThat(contrast(Color.BLACK, Color.WHITE)).isEqualTo(21, org.assertj.core.api.Assertions.within(1e-9));
    }

    @ParameterizedTest
    @EnumSource(Theme.class)
    void writesEveryAnswerAtSevenToOneOrMore(Theme theme) {
        install(theme);
        for (Tone tone : Tone.values()) {
            assertThat(contrast(tone.plate(), tone.onPlate()))
                    .as(theme + " " + tone)
                    .isGreaterThanOrEqualTo(ANSWER_CONTRAST);
        }
    }

    @ParameterizedTest
    @EnumSource(Theme.class)
    void writesAllOtherTextReadably(Theme theme) {
        install(theme);
        for (String ground : new String[] {"ground", "card", "well"}) {
            for (String ink : new String[] {"ink", "quiet"}) {
                assertThat(contrast(Look.color(ground), Look.color(ink)))
                        .as(theme + " " + ink + " on " + ground)
                        .isGreaterThanOrEqualTo(TEXT_CONTRAST);
            }
            for (Tone tone : Tone.values()) {
                assertThat(contrast(Look.color(ground), tone.ink()))
                        .as(theme + " " + tone + " on " + ground)
                        .isGreaterThanOrEqualTo(TEXT_CONTRAST);
            }
        }
        for (Tone tone : Tone.values()) {
            assertThat(contrast(tone.wash(), Look.color("ink")))
                    .as("ink on " + tone)
                    .isGreaterThanOrEqualTo(ANSWER_CONTRAST);
            assertThat(contrast(tone.wash(), tone.ink())).as(tone + " sign").isGreaterThanOrEqualTo(TEXT_CONTRAST);
        }
    }

    @ParameterizedTest
    @EnumSource(Theme.class)
    void tellsPassFromFailByLuminanceAlone(Theme theme) {
        install(theme);

        assertThat(contrast(Tone.PASS.plate(), Tone.FAULT.plate())).isGreaterThanOrEqualTo(PASS_TO_FAIL);
        assertThat(contrast(Tone.ATTENTION.plate(), Tone.FAULT.plate())).isGreaterThanOrEqualTo(PASS_TO_FAIL);
    }

    @Test
    void givesEveryAnswerItsOwnSignAsWellAsItsTone() {
        Set<Sign> signs = new TreeSet<>();
        for (String state : new String[] {
            "answer-pass",
            "answer-fail",
            "answer-sweep-again",
            "answer-plug-in",
            "answer-check-label",
            "answer-safety-hold",
            "answer-manual-hold"
        }) {
            assertThat(signs.add(Guide.of(SampleStates.named(state)).sign()))
                    .as(state)
                    .isTrue();
        }
    }

    @Test
    void namesTheSameColoursInBothThemes() throws IOException {
        assertThat(ownKeys("Dark")).isEqualTo(ownKeys("Light"));
    }

    private static Set<String> ownKeys(String theme) throws IOException {
        Properties properties = new Properties();
        try (InputStream in = Look.class.getResourceAsStream("Docksweep" + theme + "Laf.properties")) {
            properties.load(in);
        }
        return new TreeSet<>(properties.stringPropertyNames());
    }
}
