package org.docksweep.kiosk.dock;

import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Route;
import org.docksweep.fleet.Verdict;
import org.docksweep.fleet.VisualItem;
import org.docksweep.gate.Finding;
import org.docksweep.gate.ReadingState;
import org.docksweep.judge.CabinetJudgement;
import org.docksweep.judge.PositionState;
import org.docksweep.judge.Prompt;
import org.docksweep.suspect.Suspect;

/** Where a cabinet goes, and why. Pure functions. */
final class Routing {
    private Routing() {}

    /**
     * A route with everything that belongs to it.
     *
     * @param route where it goes
     * @param verdict verdict of the sweeps, or null without one
     * @param watch watch mark
     * @param reason the deciding sentence
     * @param faultPositionCode position at fault, or null
     * @param positions states of the positions
     * @param suspects suspects
     * @param judgeVersion version of the judgement, or null without one
     */
    record Routed(
            Route route,
            Verdict verdict,
            boolean watch,
            Reason reason,
            String faultPositionCode,
            List<PositionState> positions,
            List<Suspect> suspects,
            String judgeVersion) {}

    /**
     * Route that the visual list alone decides: safety hold for rigging and mains inlet, manual hold for a wet one.
     *
     * @param tag cabinet
     * @param model its model
     * @param damage items that are not fine
     * @return the route, or null when the cabinet is to be swept
     */
    static Routed byLook(AssetTag tag, CabinetModel model, Set<VisualItem> damage) {
        if (damage.stream().anyMatch(VisualItem::forcesSafetyHold)) {
            String key = damage.contains(VisualItem.RIGGING) ? "dock-safety-hold-rigging" : "dock-safety-hold-mains";
            return unswept(Route.SAFETY_HOLD, model, Reason.of(key, tag.value()));
        }
        if (damage.contains(VisualItem.WET)) {
            return unswept(Route.MANUAL_HOLD, model, Reason.of("dock-wet", tag.value()));
        }
        return null;
    }

    /**
     * Manual hold.
     *
     * @param model model of the cabinet
     * @param reason why
     * @param judgement the judgement so far, or null
     * @return the route
     */
    static Routed hold(CabinetModel model, Reason reason, CabinetJudgement judgement) {
        if (judgement == null) {
            return unswept(Route.MANUAL_HOLD, model, reason);
        }
        return new Routed(
                Route.MANUAL_HOLD,
                judgement.verdict(),
                false,
                reason,
                faultPosition(judgement),
                judgement.positions(),
                judgement.suspects(),
                judgement.judgeVersion());
    }

    /**
     * Route by the judgement over all test points. What a person must sort out first goes to manual hold, never to the
     * bench and never to the shelf.
     *
     * @param model model of the cabinet
     * @param judgement the judgement
     * @param damage items of the visual list that are not fine and do not hold the cabinet; they earn a watch mark
     * @return the route
     */
    static Routed byJudgement(CabinetModel model, CabinetJudgement judgement, Set<VisualItem> damage) {
        if (judgement.prompt() != Prompt.NONE || judgement.verdict() == Verdict.SWEEP_AGAIN) {
            return hold(model, judgement.reason(), judgement);
        }
        boolean pass = judgement.verdict() == Verdict.PASS;
        return new Routed(
                pass ? Route.SHELF : Route.BENCH,
                judgement.verdict(),
                pass && (judgement.watch() || !damage.isEmpty()),
                judgement.reason(),
                pass ? null : faultPosition(judgement),
                judgement.positions(),
                judgement.suspects(),
                judgement.judgeVersion());
    }

    private static Routed unswept(Route route, CabinetModel model, Reason reason) {
        return new Routed(route, null, false, reason, null, unjudged(model), List.of(), null);
    }

    static List<PositionState> unjudged(CabinetModel model) {
        return model.positions().stream()
                .map(p -> new PositionState(
                        p.code(), ReadingState.NOT_JUDGED, Reason.of("dock-position-not-judged"), null))
                .toList();
    }

    private static String faultPosition(CabinetJudgement judgement) {
        Stream<String> bySuspect = judgement.suspects().stream().limit(1).map(Suspect::positionCode);
        Stream<String> byFinding = judgement.points().stream()
                .flatMap(p -> p.findings().stream())
                .filter(f -> f.severity() == ReadingState.FAULT)
                .map(Finding::positionCode);
        Stream<String> byPosition = judgement.positions().stream()
                .filter(p -> p.state() == ReadingState.FAULT)
                .map(PositionState::positionCode);
        return Stream.of(bySuspect, byFinding, byPosition)
                .flatMap(s -> s)
                .filter(Objects::nonNull)
                .findFirst()
                .orElse(null);
    }

    static String words(Set<VisualItem> damage) {
        return new TreeSet<>(damage).stream().map(Enum::name).collect(Collectors.joining(", "));
    }
}
