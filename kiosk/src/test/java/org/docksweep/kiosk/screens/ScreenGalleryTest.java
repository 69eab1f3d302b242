package org.docksweep.kiosk.screens;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Paints the pictures of {@code docs/images}: every state in English at 1280 x 800 in both themes, a few at 200 % and
 * in German. Needs no display. The command stands in {@code docs/images/README.md}:
 *
 * <pre>mvn -pl kiosk -am test -Dtest=ScreenGalleryTest -Dsurefire.failIfNoSpecifiedTests=false
 *     -Ddocksweep.gallery=../docs/images</pre>
 *
 * <p>{@code -Ddocksweep.gallery.all=true} paints every state at both scales, in both themes and languages, {@code survey} at 100 %
 * only. Without a folder one picture is painted into a temporary one, to know that the command works.
 */
class ScreenGalleryTest {
    private static final Set<String> SHOWN_LARGE = Set.of("answer-fail");
    private static final Set<String> SHOWN_GERMAN = Set.of("answer-fail", "look", "sweep-queued");
    private static final Set<String> RIG_SHOWN_DARK = Set.of(
            "new",
            "passed",
            "drifts",
            "failed",
            "old",
            "walk-common-mode",
            "walk-load",
            "walk-plug",
            "plug-worn",
            "study",
            "study-poor",
            "walk-refused",
            "sound-moved",
            "mic-failed",
            "walk-done",
            "walk-failed",
            "setup",
            "setup-wrong",
            "setup-gone",
            "levels");
    private static final Set<String> RIG_SHOWN_LIGHT = Set.of("passed", "walk-load");
    private static final Set<String> RIG_SHOWN_LARGE = Set.of("walk-load");
    private static final Set<String> RIG_SHOWN_GERMAN = Set.of("setup-wrong", "walk-common-mode");

    @TempDir
    private Path temporary;

    @Test
    void paintsThePictures() throws IOException {
        String folder = System.getProperty("docksweep.gallery");
        if (folder == null) {
            paint(temporary, GalleryScene.all().get(0), settings(Theme.DARK, 1, Locale.ENGLISH));
            assertThat(temporary.resolve("dock-ready-dark.png")).isNotEmptyFile();
            return;
        }
        Files.createDirectories(Path.of(folder));
        boolean all = GalleryPane.all();
        boolean large = all && !GalleryPane.survey();
        for (Theme theme : Theme.values()) {
            for (GalleryScene scene : GalleryScene.all()) {
                paint(Path.of(folder), scene, settings(theme, 1, Locale.ENGLISH));
            }
            for (GalleryScene scene : GalleryScene.all()) {
                if (all || theme == Theme.DARK && SHOWN_GERMAN.contains(scene.name())) {
                    paint(Path.of(folder), scene, settings(theme, 1, Locale.GERMAN));
                }
            }
            for (GalleryScene scene : GalleryScene.all()) {
                if (large || !all && SHOWN_LARGE.contains(scene.name())) {
                    paint(Path.of(folder), scene, settings(theme, 2, Locale.ENGLISH));
                }
                if (large) {
                    paint(Path.of(folder), scene, settings(theme, 2, Locale.GERMAN));
                }
            }
            for (String name : RigSamples.all().keySet()) {
                boolean dark = theme == Theme.DARK;
                if (all || (dark ? RIG_SHOWN_DARK : RIG_SHOWN_LIGHT).contains(name)) {
                    paintRig(Path.of(folder), name, settings(theme, 1, Locale.ENGLISH));
                }
                if (all || dark && RIG_SHOWN_GERMAN.contains(name)) {
                    paintRig(Path.of(folder), name, settings(theme, 1, Locale.GERMAN));
                }
                if (large || !all && dark && RIG_SHOWN_LARGE.contains(name)) {
                    paintRig(Path.of(folder), name, settings(theme, 2, Locale.ENGLISH));
                }
            }
        }
    }

    private static ScreenSettings settings(Theme theme, double scale, Locale locale) {
        return new ScreenSettings(theme, scale, locale, GalleryPane.ZONE);
    }

    private static void paint(Path folder, GalleryScene scene, ScreenSettings settings) {
        SampleTexts texts = new SampleTexts(settings.locale(), settings.zone(), 0);
        GalleryPane.paint(
                scene,
                settings,
                texts,
                painted -> write(painted, folder.resolve(GalleryPane.name("dock", scene.name(), settings))));
    }

    private static void paintRig(Path folder, String name, ScreenSettings settings) {
        SampleTexts texts = new SampleTexts(settings.locale(), settings.zone(), 0);
        GalleryPane.paint(
                () -> RigSamples.window(RigSamples.all().get(name), settings, texts),
                settings,
                painted -> write(painted, folder.resolve(GalleryPane.name("rig", name, settings))));
    }

    private static Path write(GalleryPane.Painted painted, Path file) {
        try {
            SmallPng.write(painted.image(), file);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot write " + file, e);
        }
        return file;
    }
}
