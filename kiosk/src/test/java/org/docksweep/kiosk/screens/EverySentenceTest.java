package org.docksweep.kiosk.screens;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.ResourceBundle;
import java.util.function.Function;
import org.docksweep.fleet.Reason;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.dock.DockState;
import org.docksweep.kiosk.dock.DockState.Answer;
import org.docksweep.kiosk.dock.DockState.Notice;
import org.docksweep.kiosk.dock.DockState.NoticeAction;
import org.docksweep.kiosk.dock.DockState.TagPrint;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The sentences the dock and the gate really say, each in the place where the page shows it. */
class EverySentenceTest {
    private static final String[] ARGUMENTS = {"MCH-000117", "1+ / 1-", "Spindrift 12", "11", "2"};

    private static List<String> keys(String prefix, Locale locale) {
        return Collections.list(ResourceBundle.getBundle("org.docksweep.fleet.reasons", locale)
                        .getKeys())
                .stream()
                .filter(key -> key.startsWith(prefix))
                .sorted()
                .toList();
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "de"})
    void fitsAsANoticeWithTwoActions(String language) {
        Locale locale = Locale.forLanguageTag(language);
        List<String> faults = new ArrayList<>();
        List<String> keys = keys("dock-", locale);
        assertThat(keys).isNotEmpty();
        for (String key : keys) {
            faults.addAll(faults(locale, key, EverySentenceTest::noticing, "unexpected"));
        }

        assertThat(faults).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "de"})
    void fitsAsTheReasonBesideThreeSuspects(String language) {
        Locale locale = Locale.forLanguageTag(language);
        List<String> faults = new ArrayList<>();
        List<String> keys = keys("verdict-", locale);
        assertThat(keys).isNotEmpty();
        for (String key : keys) {
            faults.addAll(faults(locale, key, EverySentenceTest::answering, "answer-fail"));
        }

        assertThat(faults).isEmpty();
    }

    private static List<String> faults(Locale locale, String key, Function<Reason, DockState> state, String name) {
        ScreenSettings settings = new ScreenSettings(Theme.LIGHT, 1, locale, GalleryPane.ZONE);
        GalleryScene scene = new GalleryScene(name, state.apply(Reason.of(key, ARGUMENTS)), List.of());
        SampleTexts texts = new SampleTexts(locale, settings.zone(), 0);
        return GalleryPane.write(scene, settings, texts, GalleryPane.SIZE, painted -> {
            List<String> faults = new ArrayList<>();
            for (Component component : painted.components()) {
                if (component instanceof WritesText writer) {
                    writer.shortfalls().forEach(s -> faults.add(key + ": " + s));
                    writer.written().stream()
                            .filter(w -> w.box().getMaxY() > component.getHeight())
                            .forEach(w -> faults.add(key + ": \"" + w.text() + "\" runs out of the page"));
                }
            }
            return faults;
        });
    }

    private static DockState noticing(Reason reason) {
        DockState s = SampleStates.named("unexpected");
        Notice notice = new Notice(
                ReadingState.WATCH, reason, List.of(NoticeAction.CHECK_IN_ANYWAY, NoticeAction.SHOW_EARLIER));
        return new DockState(
                s.phase(),
                s.strip(),
                s.returns(),
                s.scans(),
                Optional.of(notice),
                s.cabinet(),
                s.visualDamage(),
                s.curve(),
                s.progress(),
                s.answer());
    }

    private static DockState answering(Reason reason) {
        DockState s = SampleStates.named("answer-fail");
        Answer a = s.answer().orElseThrow();
        Answer said = new Answer(
                a.verdict(),
                a.prompt(),
                a.route(),
                a.place(),
                a.watch(),
                reason,
                a.suspects(),
                a.jobCode(),
                TagPrint.PRINTED);
        return new DockState(
                s.phase(),
                s.strip(),
                s.returns(),
                s.scans(),
                s.notice(),
                s.cabinet(),
                s.visualDamage(),
                s.curve(),
                s.progress(),
                Optional.of(said));
    }
}
