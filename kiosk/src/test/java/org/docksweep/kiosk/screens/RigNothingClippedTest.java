package org.docksweep.kiosk.screens;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Dimension;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Room for every text of the rig page, in the whole window. */
class RigNothingClippedTest {
    /** Sentences in other languages run longer than English ones (common practice, no source). */
    private static final double LONGER = 0.35;

    static Stream<Arguments> waysToShow() {
        List<Arguments> ways = new ArrayList<>();
        for (Theme theme : Theme.values()) {
            for (double scale : new double[] {1, 2}) {
                for (Locale locale : new Locale[] {Locale.ENGLISH, Locale.GERMAN}) {
                    RigSamples.all().keySet().forEach(name -> ways.add(Arguments.of(name, theme, scale, locale)));
                }
            }
        }
        return ways.stream();
    }

    static Stream<String> scenes() {
        return RigSamples.all().keySet().stream();
    }

    @ParameterizedTest
    @MethodSource("waysToShow")
    void givesEveryTextItsRoom(String name, Theme theme, double scale, Locale locale) {
        assertThat(faults(name, new ScreenSettings(theme, scale, locale, GalleryPane.ZONE), 0, GalleryPane.SIZE))
                .isEmpty();
    }

    @ParameterizedTest
    @MethodSource("scenes")
    void hasRoomForLongerLanguagesInsideTheFrameOfAWindow(String name) {
        ScreenSettings settings = new ScreenSettings(Theme.LIGHT, 1, Locale.ENGLISH, GalleryPane.ZONE);

        assertThat(faults(name, settings, LONGER, new Dimension(1278, 770))).isEmpty();
    }

    private static List<String> faults(String name, ScreenSettings settings, double longer, Dimension size) {
        SampleTexts texts = new SampleTexts(settings.locale(), settings.zone(), longer);
        return GalleryPane.write(
                () -> RigSamples.window(RigSamples.all().get(name), settings, texts),
                settings,
                size,
                painted -> NothingClippedTest.faults(painted, settings));
    }
}
