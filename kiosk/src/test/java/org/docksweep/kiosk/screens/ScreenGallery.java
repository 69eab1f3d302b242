package org.docksweep.kiosk.screens;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import javax.imageio.ImageIO;

/**
 * Paints the pictures of {@code docs/images}: every state in English at 1280 x 800 in both themes, and a few at 200 %
 * and in German. {@code --all} paints every state in every way. Needs no display.
 *
 * <p>Usage: {@code ScreenGallery [--all] folder [scene]...}
 */
public final class ScreenGallery {
    static final ZoneId ZONE = ZoneId.of("UTC");
    private static final Set<String> SHOWN_LARGE = Set.of("answer-fail");
    private static final Set<String> SHOWN_GERMAN = Set.of("answer-fail", "look", "sweep");

    private ScreenGallery() {}

    /**
     * Paints the pictures.
     *
     * @param arguments {@code --all}, folder, names of scenes
     */
    public static void main(String[] arguments) {
        List<String> words = List.of(arguments);
        boolean all = words.contains("--all");
        List<String> rest = words.stream().filter(w -> !w.equals("--all")).toList();
        if (rest.isEmpty()) {
            throw new IllegalArgumentException("say where the pictures go: ScreenGallery [--all] folder [scene]...");
        }
        Path folder = Path.of(rest.get(0));
        for (GalleryScene scene : GalleryScene.all()) {
            if (rest.size() == 1 || rest.contains(scene.name())) {
                for (Theme theme : Theme.values()) {
                    paint(folder, scene, new ScreenSettings(theme, 1, Locale.ENGLISH, ZONE));
                }
                if (all || SHOWN_GERMAN.contains(scene.name())) {
                    paint(folder, scene, new ScreenSettings(Theme.DARK, 1, Locale.GERMAN, ZONE));
                }
                if (all || SHOWN_LARGE.contains(scene.name())) {
                    paint(folder, scene, new ScreenSettings(Theme.DARK, 2, Locale.ENGLISH, ZONE));
                }
                if (all) {
                    paint(folder, scene, new ScreenSettings(Theme.LIGHT, 1, Locale.GERMAN, ZONE));
                    paint(folder, scene, new ScreenSettings(Theme.LIGHT, 2, Locale.ENGLISH, ZONE));
                    paint(folder, scene, new ScreenSettings(Theme.LIGHT, 2, Locale.GERMAN, ZONE));
                    paint(folder, scene, new ScreenSettings(Theme.DARK, 2, Locale.GERMAN, ZONE));
                }
            }
        }
    }

    private static void paint(Path folder, GalleryScene scene, ScreenSettings settings) {
        String name = "dock-" + scene.name() + "-" + settings.theme().name().toLowerCase(Locale.ROOT)
                + (settings.scale() == 1 ? "" : "-200")
                + (settings.locale().equals(Locale.ENGLISH)
                        ? ""
                        : "-" + settings.locale().getLanguage()) + ".png";
        SampleTexts texts = new SampleTexts(settings.locale(), settings.zone(), 0);
        GalleryPane.paint(scene, settings, texts, painted -> {
            try {
                Files.createDirectories(folder);
                ImageIO.write(painted.image(), "png", folder.resolve(name).toFile());
            } catch (IOException e) {
                throw new UncheckedIOException("cannot write " + folder.resolve(name), e);
            }
            return name;
        });
    }
}
