package org.docksweep.kiosk.screens;

import static org.mockito.Mockito.mock;

import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.lang.reflect.InvocationTargetException;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Function;
import java.util.function.Supplier;
import javax.swing.JComponent;
import javax.swing.SwingUtilities;
import org.docksweep.kiosk.dock.DockActions;

/** A page laid out and painted without a display. */
final class GalleryPane {
    /** Design size of the page. */
    static final Dimension SIZE = new Dimension(1280, 800);

    /** Size of pictures: {@code -Ddocksweep.gallery.size=1920x1080} for another one. */
    private static final Dimension PICTURE = Optional.ofNullable(System.getProperty("docksweep.gallery.size"))
            .map(size -> size.split("x"))
            .map(s -> new Dimension(Integer.parseInt(s[0]), Integer.parseInt(s[1])))
            .orElse(SIZE);

    /** What a frame, the bar of pages and the strip leave of a picture for a page beside the dock's. */
    static final Dimension PAGE = new Dimension(PICTURE.width - 2 - PageBar.WIDTH, PICTURE.height - 30 - 48);

    static final ZoneId ZONE = ZoneId.of("UTC");

    private static ScreenSettings installed;

    private GalleryPane() {}

    /** Name of a picture's file. */
    static String name(String page, String scene, ScreenSettings settings) {
        return page + "-" + scene + "-" + settings.theme().name().toLowerCase(Locale.ROOT)
                + (settings.scale() == 1 ? "" : "-200")
                + (settings.locale().equals(Locale.ENGLISH)
                        ? ""
                        : "-" + settings.locale().getLanguage()) + ".png";
    }

    /** Every state in both languages and themes: {@code -Ddocksweep.gallery.all=true}; {@code survey} leaves 200 % out. */
    static boolean all() {
        return survey() || Boolean.getBoolean("docksweep.gallery.all");
    }

    /** Every state in both languages and themes, at 100 % only. */
    static boolean survey() {
        return "survey".equals(System.getProperty("docksweep.gallery.all"));
    }

    /** How the pages without a selection of their own are painted: dark and English, or with {@link #all()} in every way. */
    static List<ScreenSettings> wanted() {
        if (!all()) {
            return List.of(new ScreenSettings(Theme.DARK, 1, Locale.ENGLISH, ZONE));
        }
        List<ScreenSettings> all = new ArrayList<>();
        for (Theme theme : Theme.values()) {
            for (double scale : survey() ? new double[] {1} : new double[] {1, 2}) {
                for (Locale locale : List.of(Locale.ENGLISH, Locale.GERMAN)) {
                    all.add(new ScreenSettings(theme, scale, locale, ZONE));
                }
            }
        }
        return all;
    }

    /** Makes, lays out and paints the page of a scene on the event thread and asks something of it. */
    static <T> T paint(GalleryScene scene, ScreenSettings settings, Texts texts, Function<Painted, T> ask) {
        return paint(() -> page(scene, settings, texts), settings, ask);
    }

    /** The same for any page. */
    static <T> T paint(Supplier<JComponent> page, ScreenSettings settings, Function<Painted, T> ask) {
        return shown(page, settings, PICTURE, pane -> {
            BufferedImage image = new BufferedImage(pane.getWidth(), pane.getHeight(), BufferedImage.TYPE_INT_RGB);
            Graphics2D g = image.createGraphics();
            pane.paint(g);
            g.dispose();
            return ask.apply(new Painted(pane, image));
        });
    }

    /** Like paint, but for what was written only: nothing is filled in, which is many times faster. */
    static <T> T write(
            GalleryScene scene, ScreenSettings settings, Texts texts, Dimension size, Function<Painted, T> ask) {
        return write(() -> page(scene, settings, texts), settings, size, ask);
    }

    /** The same for any page. */
    static <T> T write(Supplier<JComponent> page, ScreenSettings settings, Dimension size, Function<Painted, T> ask) {
        return shown(page, settings, size, pane -> {
            BufferedImage dot = new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB);
            Painted painted = new Painted(pane, dot);
            for (Component component : painted.components()) {
                if (component instanceof WritesText) {
                    Graphics2D g = dot.createGraphics();
                    component.paint(g);
                    g.dispose();
                }
            }
            return ask.apply(painted);
        });
    }

    /** Installing a look takes longer than painting a page; it is done when it changes. */
    static void install(ScreenSettings settings) {
        if (!settings.equals(installed)) {
            Look.install(settings);
            installed = settings;
        }
    }

    private static KioskPane page(GalleryScene scene, ScreenSettings settings, Texts texts) {
        KioskPane pane = new KioskPane(
                mock(DockActions.class),
                SampleAnswers.in(settings.locale(), scene.state()),
                SampleHouse.MODELS,
                new Sizes(settings.scale()),
                texts);
        scene.pressed().forEach(pane::perform);
        return pane;
    }

    private static <T> T shown(
            Supplier<JComponent> page, ScreenSettings settings, Dimension size, Function<JComponent, T> use) {
        AtomicReference<T> result = new AtomicReference<>();
        onEventThread(() -> {
            install(settings);
            Sizes sizes = new Sizes(settings.scale());
            JComponent pane = page.get();
            pane.setSize(sizes.px(size.width), sizes.px(size.height));
            layOut(pane);
            result.set(use.apply(pane));
        });
        return result.get();
    }

    /**
     * A painted page.
     *
     * @param pane the page
     * @param image what it looks like
     */
    record Painted(JComponent pane, BufferedImage image) {
        List<Component> components() {
            return componentsOf(pane);
        }
    }

    /** A component and everything visible in it. */
    static List<Component> componentsOf(Component whole) {
        List<Component> all = new ArrayList<>();
        collect(whole, all);
        return all;
    }

    private static void collect(Component component, List<Component> all) {
        if (component.isVisible()) {
            all.add(component);
            if (component instanceof Container container) {
                for (Component child : container.getComponents()) {
                    collect(child, all);
                }
            }
        }
    }

    /** Without a peer, validation does nothing; laying out by hand does. */
    private static void layOut(Container container) {
        container.doLayout();
        for (Component child : container.getComponents()) {
            if (child instanceof Container inner) {
                layOut(inner);
            }
        }
    }

    static void onEventThread(Runnable work) {
        if (SwingUtilities.isEventDispatchThread()) {
            work.run();
            return;
        }
        try {
            SwingUtilities.invokeAndWait(work);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while painting", e);
        } catch (InvocationTargetException e) {
            throw new IllegalStateException("painting failed: " + e.getCause(), e.getCause());
        }
    }
}
