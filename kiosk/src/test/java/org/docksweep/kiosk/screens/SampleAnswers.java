package org.docksweep.kiosk.screens;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Reasons;
import org.docksweep.fleet.Route;
import org.docksweep.fleet.Verdict;
import org.docksweep.judge.Prompt;
import org.docksweep.kiosk.dock.DockState;
import org.docksweep.kiosk.dock.DockState.Answer;
import org.docksweep.kiosk.dock.DockState.TagPrint;
import org.docksweep.suspect.FaultKind;
import org.docksweep.suspect.Suspect;

/** Answers of the dock, for the pictures. */
final class SampleAnswers {
    private SampleAnswers() {}

    static Answer prompted(Prompt prompt, Reason reason) {
        return new Answer(
                prompt == Prompt.SWEEP_AGAIN ? Optional.of(Verdict.SWEEP_AGAIN) : Optional.empty(),
                prompt,
                Optional.empty(),
                "",
                false,
                reason,
                List.of(),
                Optional.empty(),
                TagPrint.NOT_NEEDED);
    }

    static Answer routed(Verdict verdict, Route route, String place, boolean watch, String reason) {
        return new Answer(
                Optional.ofNullable(verdict),
                Prompt.NONE,
                Optional.of(route),
                place,
                watch,
                Reason.of(reason),
                List.of(),
                Optional.empty(),
                TagPrint.NOT_NEEDED);
    }

    static Answer bench(String reason, List<Suspect> suspects, TagPrint print) {
        return new Answer(
                Optional.of(Verdict.FAIL),
                Prompt.NONE,
                Optional.of(Route.BENCH),
                "bench",
                false,
                Reason.of(reason),
                suspects,
                Optional.of(JobCode.of(1, 42)),
                print);
    }

    static Suspect suspect(FaultKind kind, String position, String element, double share, String next) {
        return new Suspect(kind, "IN", position, element, share, Reason.of("evidence"), Reason.of(next));
    }

    /** As the dock itself says it: in the kiosk's language. */
    static DockState in(Locale locale, DockState state) {
        return new DockState(
                state.phase(),
                state.strip(),
                state.returns(),
                state.scans(),
                state.notice(),
                state.cabinet(),
                state.visualDamage(),
                state.curve(),
                state.progress(),
                state.answer()
                        .map(a -> new Answer(
                                a.verdict(),
                                a.prompt(),
                                a.route(),
                                a.route().map(r -> place(r, locale)).orElse(a.place()),
                                a.watch(),
                                a.reason(),
                                a.suspects(),
                                a.jobCode(),
                                a.tagPrint())));
    }

    private static String place(Route route, Locale locale) {
        Reason place = route == Route.SHELF
                ? Reason.of("dock-place-shelf", "C-04")
                : Reason.of(
                        "dock-place-" + route.name().toLowerCase(Locale.ROOT).replace('_', '-'));
        return Reasons.text(place, locale);
    }
}
