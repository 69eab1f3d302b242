package org.docksweep.kiosk.screens;

import static org.assertj.core.api.Assertions.assertThat;
import static org.mockito.ArgumentMatchers.any;
import static org.mockito.Mockito.doAnswer;
import static org.mockito.Mockito.mock;
import static org.mockito.Mockito.never;
import static org.mockito.Mockito.verify;
import static org.mockito.Mockito.verifyNoInteractions;
import static org.mockito.Mockito.verifyNoMoreInteractions;

import java.awt.Component;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import java.util.function.Consumer;
import javax.swing.AbstractButton;
import javax.swing.JComponent;
import org.docksweep.fleet.VisualItem;
import org.docksweep.kiosk.dock.DockActions;
import org.docksweep.kiosk.dock.DockState.NoticeAction;
import org.docksweep.kiosk.printing.PaperView;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class KioskPaneTest {
    private final DockActions actions = mock(DockActions.class);

    /** What a test does once the event thread has done what it was given meanwhile. */
    private static final java.util.List<Runnable> later = new java.util.ArrayList<>();

    private void on(String state, Consumer<KioskPane> use) {
        later.clear();
        GalleryPane.onEventThread(() -> {
            GalleryPane.install(new ScreenSettings(Theme.DARK, 1, Locale.ENGLISH, GalleryPane.ZONE));
            use.accept(new KioskPane(
                    actions,
                    SampleStates.named(state),
                    SampleHouse.MODELS,
                    new Sizes(1),
                    new SampleTexts(Locale.ENGLISH, GalleryPane.ZONE, 0)));
        });
        GalleryPane.onEventThread(() -> later.forEach(Runnable::run));
    }

    private static void type(KioskPane pane, String text) {
        pane.scanField().setText(text);
        pane.scanField().postActionEvent();
    }

    @Test
    void handsOverAScanAsItWasReadAndClearsTheLine() {
        on("ready", pane -> {
            type(pane, " ~MCH-000117~");

            assertThat(pane.scanField().getText()).isEmpty();
        });

        verify(actions).scan(" ~MCH-000117~");
    }

    @Test
    void takesOffWhatTheScannerPutsAroundACodeAndNothingElse() {
        GalleryPane.onEventThread(() -> {
            GalleryPane.install(
                    new ScreenSettings(Theme.DARK, 1, Locale.ENGLISH, GalleryPane.ZONE, new ScanFrame("$S", "#")));
            KioskPane pane = new KioskPane(
                    actions,
                    SampleStates.named("ready"),
                    SampleHouse.MODELS,
                    new Sizes(1),
                    new SampleTexts(Locale.ENGLISH, GalleryPane.ZONE, 0));
            type(pane, "$SMCH-000117#");
            type(pane, "MCH-000118");
            type(pane, "$S#");
        });

        verify(actions).scan("MCH-000117");
        verify(actions).scan("MCH-000118");
        verifyNoMoreInteractions(actions);
    }

    @Test
    void ignoresEnterOnAnEmptyLine() {
        on("look", pane -> type(pane, ""));

        verifyNoInteractions(actions);
    }

    @Test
    void handsOverScansDuringASweep() {
        on("sweep", pane -> type(pane, "MCH-000118"));

        verify(actions).scan("MCH-000118");
        verifyNoMoreInteractions(actions);
    }

    @Test
    void keepsAHalfTypedTagWhenTheStateChanges() {
        on("sweep", pane -> {
            pane.scanField().setText("MCH-0001");
            pane.show(SampleStates.named("judge"));
            pane.show(SampleStates.named("answer-fail"));

            assertThat(pane.scanField().getText()).isEqualTo("MCH-0001");
        });
    }

    @Test
    void keepsAHalfTypedTagWhenStoppingASweep() {
        on("sweep", pane -> {
            pane.scanField().setText("MCH-0001");
            pane.perform(Command.STOP);

            assertThat(pane.scanField().getText()).isEqualTo("MCH-0001");
        });

        verify(actions).stop();
    }

    @ParameterizedTest
    @MethodSource("states")
    void stopsInEveryState(String state) {
        on(state, pane -> pane.perform(Command.STOP));

        verify(actions).stop();
    }

    @Test
    void offersNothingButStopWhileItSounds() {
        on("sweep", pane -> {
            for (Command command : EnumSet.complementOf(EnumSet.of(Command.STOP))) {
                assertThat(pane.perform(command)).as(command.name()).isFalse();
            }
        });

        verifyNoInteractions(actions);
    }

    @Test
    void saysAllFineWithOneKey() {
        on("look", pane -> pane.perform(Command.NEXT));

        verify(actions).lookedOver(Set.of());
    }

    @Test
    void handsOverWhatWasMarkedAndForgetsWhatWasMarkedTwice() {
        on("look-powered", pane -> {
            pane.perform(Command.CHOICE_1);
            pane.perform(Command.CHOICE_4);
            pane.perform(Command.CHOICE_5);
            pane.perform(Command.CHOICE_1);
            pane.perform(Command.NEXT);
        });

        verify(actions).lookedOver(Set.of(VisualItem.RIGGING, VisualItem.MAINS_INLET));
    }

    @Test
    void doesNotAskAPassiveCabinetForItsMainsInlet() {
        on("look", pane -> assertThat(pane.perform(Command.CHOICE_5)).isFalse());
    }

    @Test
    void startsTheNextCabinetWithoutTheMarksOfTheOneBefore() {
        on("look", pane -> {
            pane.perform(Command.CHOICE_1);
            pane.show(SampleStates.named("answer-pass"));
            pane.show(SampleStates.named("look"));
            pane.perform(Command.NEXT);
        });

        verify(actions).lookedOver(Set.of());
    }

    @Test
    void keepsMarksWhileTheClockTicks() {
        on("look", pane -> {
            pane.perform(Command.CHOICE_1);
            pane.show(SampleStates.named("look"));
            pane.perform(Command.NEXT);
        });

        verify(actions).lookedOver(Set.of(VisualItem.GRILLE));
    }

    @Test
    void goesOnAfterPlugging() {
        on("plug", pane -> pane.perform(Command.NEXT));

        verify(actions).plugged();
    }

    @Test
    void sweepsAgainOrHoldsAfterASpoiledSweep() {
        on("answer-sweep-again", pane -> {
            pane.perform(Command.NEXT);
            pane.perform(Command.HOLD);
        });

        verify(actions).sweepAgain();
        verify(actions).holdForPerson();
    }

    @Test
    void printsTheTagAgain() {
        givesTheTag();
        on("answer-fail", pane -> {
            pane.perform(Command.PRINT);
            verify(actions, never()).printTag();
            settle(() -> assertThat(pane.perform(Command.PRINT)).isTrue());
        });

        verify(actions).printTag();
    }

    @Test
    void printsNothingWhenThePersonGoesBack() {
        givesTheTag();
        on("answer-fail", pane -> {
            pane.perform(Command.PRINT);
            settle(() -> {
                assertThat(shown(pane)).contains("paper");
                assertThat(pane.perform(Command.NEXT)).isTrue();
                assertThat(shown(pane)).doesNotContain("paper");
            });
        });

        verify(actions, never()).printTag();
    }

    @Test
    void forgetsThePaperWhenAScanComes() {
        givesTheTag();
        on("answer-fail", pane -> {
            pane.perform(Command.PRINT);
            settle(() -> {
                type(pane, "MCH-000117");
                assertThat(shown(pane)).doesNotContain("paper");
            });
        });

        verify(actions, never()).printTag();
    }

    @Test
    void showsTheSheetBeforeTheListIsClosed() {
        doAnswer(call -> {
                    call.<Consumer<PaperView>>getArgument(0).accept(SamplePaper.tag());
                    return null;
                })
                .when(actions)
                .viewSheet(any());
        on("ready", pane -> {
            pane.perform(Command.CLOSE_LIST);
            settle(() -> {
                assertThat(shown(pane)).contains("paper");
                pane.perform(Command.STOP);
                assertThat(shown(pane)).doesNotContain("paper");
            });
        });

        verify(actions, never()).closeList();
    }

    private void givesTheTag() {
        doAnswer(call -> {
                    call.<Consumer<PaperView>>getArgument(0).accept(SamplePaper.tag());
                    return null;
                })
                .when(actions)
                .viewTag(any());
    }

    /** After what was handed to the event thread before. */
    private static void settle(Runnable then) {
        later.add(then);
    }

    private static java.util.List<String> shown(KioskPane pane) {
        return GalleryPane.componentsOf(pane).stream()
                .map(Component::getName)
                .filter(java.util.Objects::nonNull)
                .toList();
    }

    @Test
    void hasNoPrintKeyWithoutATag() {
        on("answer-pass", pane -> assertThat(pane.perform(Command.PRINT)).isFalse());
    }

    @Test
    void registersTheUnknownCabinetAsTheChosenModel() {
        on("unknown-tag", pane -> {
            pane.perform(Command.NOTICE_1);
            pane.perform(Command.CHOICE_3);
        });

        verify(actions).register("UNDR215");
        verifyNoMoreInteractions(actions);
    }

    @Test
    void closesTheChooserWhenTheNoticeGoes() {
        on("unknown-tag", pane -> {
            pane.perform(Command.NOTICE_1);
            pane.show(SampleStates.named("answer-pass"));

            assertThat(pane.perform(Command.CHOICE_3)).isFalse();
        });
    }

    @Test
    void takesAScanWhileTheChooserIsOpen() {
        on("unknown-tag", pane -> {
            pane.perform(Command.NOTICE_1);
            type(pane, "MCH-000119");
        });

        verify(actions).scan("MCH-000119");
    }

    @Test
    void answersANoticeByItsKeys() {
        on("unexpected", pane -> pane.perform(Command.NOTICE_1));

        verify(actions).notice(NoticeAction.CHECK_IN_ANYWAY);
    }

    @Test
    void closesTheListOnlyWhenAskedTwice() {
        on("ready", pane -> {
            pane.perform(Command.CLOSE_LIST);
            verify(actions, never()).closeList();
            pane.perform(Command.CLOSE_LIST);
        });

        verify(actions).closeList();
    }

    @Test
    void forgetsTheFirstAskWhenAScanComesBetween() {
        on("ready", pane -> {
            pane.perform(Command.CLOSE_LIST);
            type(pane, "MCH-000117");
            pane.perform(Command.CLOSE_LIST);
        });

        verify(actions).scan(any());
        verify(actions, never()).closeList();
    }

    static java.util.stream.Stream<String> states() {
        return SampleStates.all().keySet().stream();
    }

    @ParameterizedTest
    @MethodSource("states")
    void namesEveryControlAndKeepsTheFocusOffAllButTheScanLine(String state) {
        on(state, pane -> {
            for (Component component : new GalleryPane.Painted(pane, null).components()) {
                if (component instanceof WritesText) {
                    assertThat(((JComponent) component).getAccessibleContext().getAccessibleName())
                            .as(component.getClass().getSimpleName())
                            .isNotBlank();
                    assertThat(component.isFocusable()).isEqualTo(component instanceof ScanField);
                }
                if (component instanceof AbstractButton button) {
                    assertThat(button.getAccessibleContext().getAccessibleDescription())
                            .isNotBlank();
                }
            }
        });
    }
}
