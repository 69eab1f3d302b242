package org.docksweep.kiosk.screens;

import static org.assertj.core.api.Assertions.assertThat;
import static org.mockito.ArgumentMatchers.any;
import static org.mockito.Mockito.mock;
import static org.mockito.Mockito.never;
import static org.mockito.Mockito.verify;

import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.stream.Stream;
import javax.swing.JPanel;
import org.docksweep.kiosk.bench.BenchActions;
import org.docksweep.kiosk.bench.BenchStep;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** The bench page as painted, in every state, without a display. Pictures: {@code -Ddocksweep.gallery=../docs/images}. */
class BenchPageTest {
    /** Beside the bar of pages and under the strip, in a framed window of 1280 x 800. */
    private static final Dimension ROOM = GalleryPane.PAGE;

    private final BenchActions actions = mock(BenchActions.class);

    static Stream<Arguments> waysToShow() {
        List<Arguments> ways = new ArrayList<>();
        for (Theme theme : Theme.values()) {
            for (double scale : new double[] {1, 2}) {
                for (Locale locale : new Locale[] {Locale.ENGLISH, Locale.GERMAN}) {
                    SampleBench.all().keySet().forEach(name -> ways.add(Arguments.of(name, theme, scale, locale)));
                }
            }
        }
        return ways.stream();
    }

    @ParameterizedTest
    @MethodSource("waysToShow")
    void givesEveryTextItsRoom(String name, Theme theme, double scale, Locale locale) {
        page(
                name,
                new ScreenSettings(theme, scale, locale, GalleryPane.ZONE),
                0,
                shown -> assertThat(PageFaults.of(shown.components(), scale)).isEmpty());
    }

    static Stream<String> names() {
        return SampleBench.all().keySet().stream();
    }

    @ParameterizedTest
    @MethodSource("names")
    void hasRoomForLongerLanguages(String name) {
        ScreenSettings settings = new ScreenSettings(Theme.LIGHT, 1, Locale.ENGLISH, GalleryPane.ZONE);

        page(
                name,
                settings,
                0.2,
                shown -> assertThat(PageFaults.of(shown.components(), 1)).isEmpty());
    }

    @Test
    void offersTheExpectedStepOnTheFirstKey() {
        ScreenSettings settings = new ScreenSettings(Theme.DARK, 1, Locale.ENGLISH, GalleryPane.ZONE);

        page("repair", settings, 0, shown -> {
            assertThat(shown.page().perform(Command.NEXT)).isTrue();
            assertThat(shown.page().perform(Command.HOLD)).isTrue();
            assertThat(shown.page().perform(Command.CHOICE_7)).isFalse();
        });

        verify(actions).step(BenchStep.TICK);
        verify(actions).step(BenchStep.BACK);
    }

    @Test
    void marksTheNextJobByTheArrow() {
        ScreenSettings settings = new ScreenSettings(Theme.DARK, 1, Locale.ENGLISH, GalleryPane.ZONE);

        page("queue", settings, 0, shown -> shown.page().perform(Command.DOWN));

        verify(actions).mark(2);
    }

    @Test
    void showsTheCardBeforeItIsPrinted() {
        ScreenSettings settings = new ScreenSettings(Theme.DARK, 1, Locale.ENGLISH, GalleryPane.ZONE);

        page("repair", settings, 0, shown -> {
            shown.page().perform(Command.PRINT);
            verify(actions).viewCard(any());
            verify(actions, never()).step(BenchStep.PRINT_CARD);
            shown.page().showPaper(SamplePaper.sheet());
            assertThat(GalleryPane.componentsOf(shown.page().component()))
                    .anyMatch(c -> c instanceof PaperPanel && c.getParent() != null);
            assertThat(shown.page().perform(Command.PRINT)).isTrue();
            assertThat(GalleryPane.componentsOf(shown.page().component())).noneMatch(PaperPanel.class::isInstance);
        });

        verify(actions).step(BenchStep.PRINT_CARD);
    }

    @Test
    void stopsWhateverIsShown() {
        ScreenSettings settings = new ScreenSettings(Theme.DARK, 1, Locale.ENGLISH, GalleryPane.ZONE);

        page("proof-sweep", settings, 0, shown -> shown.page().perform(Command.STOP));

        verify(actions).stop();
    }

    @Test
    void paintsThePictures() {
        String folder = System.getProperty("docksweep.gallery");
        for (String name : folder == null
                ? List.of("queue")
                : List.copyOf(SampleBench.all().keySet())) {
            for (ScreenSettings settings : GalleryPane.wanted()) {
                page(name, settings, 0, shown -> {
                    assertThat(shown.image().getRGB(5, 5)).isNotZero();
                    if (folder != null) {
                        try {
                            SmallPng.write(
                                    shown.image(), Path.of(folder).resolve(GalleryPane.name("bench", name, settings)));
                        } catch (IOException e) {
                            throw new UncheckedIOException(e);
                        }
                    }
                });
            }
        }
    }

    /** A page that was painted. */
    private record Shown(BenchPage page, JPanel whole, BufferedImage image) {
        List<Component> components() {
            return GalleryPane.componentsOf(whole);
        }
    }

    private void page(String name, ScreenSettings settings, double longer, Consumer<Shown> use) {
        GalleryPane.onEventThread(() -> {
            GalleryPane.install(settings);
            Sizes sizes = new Sizes(settings.scale());
            Texts texts = new SampleTexts(settings.locale(), settings.zone(), longer);
            BenchPage page = new BenchPage(actions, SampleBench.all().get(name), SampleHouse.MODELS, sizes, texts);
            JPanel whole = (JPanel) page.component();
            whole.setSize(sizes.px(ROOM.width), sizes.px(ROOM.height));
            layOut(whole);
            BufferedImage image = new BufferedImage(whole.getWidth(), whole.getHeight(), BufferedImage.TYPE_INT_RGB);
            Graphics2D g = image.createGraphics();
            whole.paint(g);
            g.dispose();
            use.accept(new Shown(page, whole, image));
        });
    }

    private static void layOut(Container container) {
        container.doLayout();
        for (Component child : container.getComponents()) {
            if (child instanceof Container inner) {
                layOut(inner);
            }
        }
    }
}
