package org.docksweep.kiosk.screens;

import static org.assertj.core.api.Assertions.assertThat;
import static org.mockito.Mockito.mock;
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
import org.docksweep.kiosk.teaching.TeachingActions;
import org.docksweep.kiosk.teaching.TeachingStep;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** The fleet page as painted, in every state, without a display. Pictures: {@code -Ddocksweep.gallery=../docs/images}. */
class FleetPageTest {
    /** Beside the bar of pages and under the strip, in a framed window of 1280 x 800. */
    private static final Dimension ROOM = GalleryPane.PAGE;

    private final TeachingActions actions = mock(TeachingActions.class);

    static Stream<Arguments> waysToShow() {
        List<Arguments> ways = new ArrayList<>();
        for (Theme theme : Theme.values()) {
            for (double scale : new double[] {1, 2}) {
                for (Locale locale : new Locale[] {Locale.ENGLISH, Locale.GERMAN}) {
                    SampleTeaching.all().keySet().forEach(name -> ways.add(Arguments.of(name, theme, scale, locale)));
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
        return SampleTeaching.all().keySet().stream();
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

        page("drawing", settings, 0, shown -> {
            assertThat(shown.page().perform(Command.NEXT)).isTrue();
            assertThat(shown.page().perform(Command.CHOICE_3)).isTrue();
            assertThat(shown.page().perform(Command.HOLD)).isTrue();
        });
        page(
                "drawing-unnamed",
                settings,
                0,
                shown -> assertThat(shown.page().perform(Command.NEXT)).isFalse());

        verify(actions).step(TeachingStep.BEGIN);
        verify(actions).step(TeachingStep.OTHER_CROSSOVER);
        verify(actions).step(TeachingStep.BACK);
    }

    @Test
    void hidesThePinWhileItIsTyped() {
        ScreenSettings settings = new ScreenSettings(Theme.DARK, 1, Locale.ENGLISH, GalleryPane.ZONE);

        page("pin", settings, 0, shown -> {
            assertThat(shown.page().keyTarget()).isInstanceOf(javax.swing.JPasswordField.class);
            javax.swing.JPasswordField field =
                    (javax.swing.JPasswordField) shown.page().keyTarget();
            assertThat(field.echoCharIsSet()).isTrue();
            field.setText("4711");
            field.postActionEvent();
            assertThat(field.getPassword()).isEmpty();
        });
        page(
                "badge",
                settings,
                0,
                shown -> assertThat(shown.page().keyTarget()).isNotInstanceOf(javax.swing.JPasswordField.class));

        verify(actions).scan("4711");
    }

    @Test
    void marksTheNextModelByTheArrow() {
        ScreenSettings settings = new ScreenSettings(Theme.DARK, 1, Locale.ENGLISH, GalleryPane.ZONE);

        page("models", settings, 0, shown -> shown.page().perform(Command.DOWN));

        verify(actions).mark(2);
    }

    @Test
    void stopsWhateverIsShown() {
        ScreenSettings settings = new ScreenSettings(Theme.DARK, 1, Locale.ENGLISH, GalleryPane.ZONE);

        page("sweep", settings, 0, shown -> shown.page().perform(Command.STOP));

        verify(actions).stop();
    }

    @Test
    void paintsThePictures() {
        String folder = System.getProperty("docksweep.gallery");
        for (String name : folder == null
                ? List.of("models")
                : List.copyOf(SampleTeaching.all().keySet())) {
            for (ScreenSettings settings : GalleryPane.wanted()) {
                page(name, settings, 0, shown -> {
                    assertThat(shown.image().getRGB(5, 5)).isNotZero();
                    if (folder != null) {
                        try {
                            SmallPng.write(
                                    shown.image(), Path.of(folder).resolve(GalleryPane.name("fleet", name, settings)));
                        } catch (IOException e) {
                            throw new UncheckedIOException(e);
                        }
                    }
                });
            }
        }
    }

    /** A page that was painted. */
    private record Shown(FleetPage page, JPanel whole, BufferedImage image) {
        List<Component> components() {
            return GalleryPane.componentsOf(whole);
        }
    }

    private void page(String name, ScreenSettings settings, double longer, Consumer<Shown> use) {
        GalleryPane.onEventThread(() -> {
            GalleryPane.install(settings);
            Sizes sizes = new Sizes(settings.scale());
            Texts texts = new SampleTexts(settings.locale(), settings.zone(), longer);
            FleetPage page = new FleetPage(actions, SampleTeaching.all().get(name), sizes, texts);
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
