package org.docksweep.kiosk.screens;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.mockito.Mockito.mock;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.docksweep.kiosk.dock.DockActions;
import org.docksweep.kiosk.printing.PaperView;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * A paper before it is printed, on the dock page. Picture: {@code -Ddocksweep.gallery=../docs/images -Ddocksweep.gallery.paper=FILE}, a
 * tag of a night.
 */
class PaperPanelTest {
    private static final double MM = 0.2;
    /** Sentences in other languages run longer than English ones (common practice, no source). */
    private static final double LONGER = 0.35;

    static Stream<Arguments> waysToShow() {
        List<Arguments> ways = new ArrayList<>();
        for (Theme theme : Theme.values()) {
            for (double scale : new double[] {1, 2}) {
                for (Locale locale : new Locale[] {Locale.ENGLISH, Locale.GERMAN}) {
                    ways.add(Arguments.of(theme, scale, locale));
                }
            }
        }
        return ways.stream();
    }

    private static KioskPane pane(ScreenSettings settings, double longer) {
        KioskPane pane = new KioskPane(
                mock(DockActions.class),
                SampleStates.named("answer-fail"),
                SampleHouse.MODELS,
                new Sizes(settings.scale()),
                new SampleTexts(settings.locale(), settings.zone(), longer));
        pane.showPaper(SamplePaper.tag());
        return pane;
    }

    @ParameterizedTest
    @MethodSource("waysToShow")
    void hasRoomAndNames(Theme theme, double scale, Locale locale) {
        ScreenSettings settings = new ScreenSettings(theme, scale, locale, GalleryPane.ZONE);

        List<String> faults = GalleryPane.write(
                () -> pane(settings, locale.equals(Locale.ENGLISH) ? LONGER : 0),
                settings,
                GalleryPane.SIZE,
                painted -> PageFaults.of(painted.components(), scale));

        assertThat(faults).isEmpty();
    }

    @Test
    void showsThePageAsItIsAndSaysItsSizeAndWhereItGoes() {
        ScreenSettings settings = new ScreenSettings(Theme.DARK, 1, Locale.ENGLISH, GalleryPane.ZONE);

        GalleryPane.paint(() -> pane(settings, 0), settings, painted -> {
            PaperPanel panel = painted.components().stream()
                    .filter(PaperPanel.class::isInstance)
                    .map(PaperPanel.class::cast)
                    .findFirst()
                    .orElseThrow();
            assertThat(panel.getAccessibleContext().getAccessibleName())
                    .isEqualTo("This is how it will be printed. 210 x 148 mm, one page."
                            + " Goes to the printer DOCK-LABELS.");
            assertThat(blackShare(painted.image(), panel))
                    .as("a third of the page")
                    .isEqualTo(1 / 3.0, within(0.02));
            return null;
        });
    }

    @Test
    void paintsThePicture() throws IOException {
        String folder = System.getProperty("docksweep.gallery");
        String paper = System.getProperty("docksweep.gallery.paper");
        byte[] pdf = paper == null ? SamplePaper.pdf(1) : Files.readAllBytes(Path.of(paper));
        for (ScreenSettings settings : GalleryPane.wanted()) {
            GalleryPane.paint(
                    () -> {
                        KioskPane pane = pane(settings, 0);
                        pane.showPaper(PaperView.of(pdf, Optional.empty()));
                        return pane;
                    },
                    settings,
                    painted -> {
                        assertThat(painted.components()).anyMatch(PaperPanel.class::isInstance);
                        if (folder != null) {
                            try {
                                SmallPng.write(
                                        painted.image(),
                                        Path.of(folder).resolve(GalleryPane.name("dock", "paper", settings)));
                            } catch (IOException e) {
                                throw new UncheckedIOException(e);
                            }
                        }
                        return null;
                    });
        }
    }

    /** Share of black among the black and white of the line through the middle of the panel. */
    private static double blackShare(BufferedImage image, PaperPanel panel) {
        var at = javax.swing.SwingUtilities.convertPoint(panel, 0, panel.getHeight() / 2, topOf(panel));
        double black = 0;
        double white = 0;
        for (int x = at.x; x < at.x + panel.getWidth(); x++) {
            int rgb = image.getRGB(x, at.y) & 0xffffff;
            black += rgb == 0 ? 1 : 0;
            white += rgb == 0xffffff ? 1 : 0;
        }
        return black / (black + white);
    }

    private static java.awt.Component topOf(java.awt.Component component) {
        return component.getParent() == null ? component : topOf(component.getParent());
    }

    @Test
    void knowsSizeAndPagesOfADocument() {
        PaperView view = SamplePaper.sheet();

        assertThat(view.pages()).isEqualTo(2);
        assertThat(view.widthMm()).isEqualTo(210, within(MM));
        assertThat(view.heightMm()).isEqualTo(148, within(MM));
    }

    @Test
    void refusesWhatIsNoDocument() {
        assertThatThrownBy(() -> PaperView.of("no paper".getBytes(StandardCharsets.UTF_8), Optional.empty()))
                .isInstanceOf(UncheckedIOException.class)
                .hasMessageContaining("cannot be drawn");
    }
}
