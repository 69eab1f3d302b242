package org.docksweep.kiosk.screens;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Dimension;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class NothingClippedTest {
    /** Sentences in other languages run longer than English ones (common practice, no source). */
    private static final double LONGER = 0.35;

    /** What a frame with a title bar leaves of a screen of 1280 x 800 (measured with openbox: 24 and 6 pixels). */
    private static final Dimension FRAMED = new Dimension(1278, 770);

    static Stream<Arguments> waysToShow() {
        List<Arguments> ways = new ArrayList<>();
        for (Theme theme : Theme.values()) {
            for (double scale : new double[] {1, 2}) {
                for (Locale locale : new Locale[] {Locale.ENGLISH, Locale.GERMAN}) {
                    for (GalleryScene scene : GalleryScene.all()) {
                        ways.add(Arguments.of(scene.name(), theme, scale, locale));
                    }
                }
            }
        }
        return ways.stream();
    }

    @ParameterizedTest
    @MethodSource("waysToShow")
    void givesEveryTextItsRoom(String name, Theme theme, double scale, Locale locale) {
        List<String> faults =
                faults(scene(name), new ScreenSettings(theme, scale, locale, GalleryPane.ZONE), 0, GalleryPane.SIZE);

        assertThat(faults).isEmpty();
    }

    static Stream<String> scenes() {
        return GalleryScene.all().stream().map(GalleryScene::name);
    }

    @ParameterizedTest
    @MethodSource("scenes")
    void hasRoomForLongerLanguages(String name) {
        ScreenSettings settings = new ScreenSettings(Theme.LIGHT, 1, Locale.ENGLISH, GalleryPane.ZONE);

        assertThat(faults(scene(name), settings, LONGER, GalleryPane.SIZE)).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("scenes")
    void hasRoomInsideTheFrameOfAWindow(String name) {
        ScreenSettings settings = new ScreenSettings(Theme.LIGHT, 1, Locale.GERMAN, GalleryPane.ZONE);

        assertThat(faults(scene(name), settings, 0, FRAMED)).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("scenes")
    void hasRoomBesideTheBarOfPages(String name) {
        ScreenSettings settings = new ScreenSettings(Theme.LIGHT, 1, Locale.GERMAN, GalleryPane.ZONE);
        Dimension beside = new Dimension(FRAMED.width - PageBar.WIDTH, FRAMED.height);

        assertThat(faults(scene(name), settings, 0, beside)).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("scenes")
    void hasRoomUnderTheBandOfPracticeInsideAFrame(String name) {
        ScreenSettings settings = new ScreenSettings(Theme.LIGHT, 1, Locale.GERMAN, GalleryPane.ZONE);
        Dimension under = new Dimension(FRAMED.width - PageBar.WIDTH, FRAMED.height - PracticeBand.HEIGHT);

        assertThat(faults(scene(name), settings, 0, under)).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("scenes")
    void hasRoomForLongerLanguagesBesideTheBarOfPages(String name) {
        ScreenSettings settings = new ScreenSettings(Theme.LIGHT, 1, Locale.ENGLISH, GalleryPane.ZONE);
        Dimension beside = new Dimension(GalleryPane.SIZE.width - PageBar.WIDTH, GalleryPane.SIZE.height);

        assertThat(faults(scene(name), settings, LONGER, beside)).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("scenes")
    void hasRoomOnALargerScreen(String name) {
        ScreenSettings settings = new ScreenSettings(Theme.LIGHT, 1, Locale.ENGLISH, GalleryPane.ZONE);

        assertThat(faults(scene(name), settings, 0, new Dimension(1920, 1080))).isEmpty();
    }

    @Test
    void noticesATextThatDoesNotFit() {
        ScreenSettings settings = new ScreenSettings(Theme.LIGHT, 1, Locale.ENGLISH, GalleryPane.ZONE);

        assertThat(faults(scene("answer-fail"), settings, 9, GalleryPane.SIZE)).isNotEmpty();
    }

    private static GalleryScene scene(String name) {
        return GalleryScene.all().stream()
                .filter(s -> s.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static List<String> faults(GalleryScene scene, ScreenSettings settings, double longer, Dimension size) {
        SampleTexts texts = new SampleTexts(settings.locale(), settings.zone(), longer);
        return GalleryPane.write(scene, settings, texts, size, painted -> faults(painted, settings));
    }

    /** Everything of a painted page that does not fit, covers something else or is too small to touch. */
    static List<String> faults(GalleryPane.Painted painted, ScreenSettings settings) {
        return PageFaults.of(painted.components(), settings.scale());
    }
}
