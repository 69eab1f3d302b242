package org.docksweep.kiosk.night;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Reasons;
import org.docksweep.fleet.VisualItem;
import org.docksweep.judge.Prompt;
import org.docksweep.kiosk.dock.Dock;
import org.docksweep.kiosk.dock.DockActions;
import org.docksweep.kiosk.dock.DockState;
import org.docksweep.kiosk.dock.DockState.NoticeAction;
import org.docksweep.kiosk.dock.DockState.Phase;

/** A tireless dock hand: scans what comes off the truck, looks, plugs when asked, and goes by what the screen says. */
final class DockHand {
    private static final long PATIENCE_S = 120;
    /** Prompts answered for one cabinet before the hand gives up and leaves it to a person. */
    private static final int MAX_PROMPTS = 6;

    private final Dock dock;
    private final DockActions fingers;
    private final BlockingQueue<DockState> states = new LinkedBlockingQueue<>();
    private final boolean again;
    private volatile boolean working;
    private DockState lastSeen;

    /**
     * How one check-in went.
     *
     * @param answer the answer on the screen
     * @param prompts what the screen asked for on the way
     * @param seconds from scan to answer
     */
    record Outcome(DockState.Answer answer, List<Prompt> prompts, double seconds) {}

    /**
     * Makes a hand.
     *
     * @param dock what it watches
     * @param fingers what it acts by: the dock itself, or the keys of its window
     */
    DockHand(Dock dock, DockActions fingers) {
        this(dock, fingers, false);
    }

    /**
     * Makes a hand.
     *
     * @param dock what it watches
     * @param fingers what it acts by
     * @param again whether a cabinet that is in already is taken in once more
     */
    DockHand(Dock dock, DockActions fingers, boolean again) {
        this.again = again;
        this.dock = dock;
        this.fingers = fingers;
        // A hand that does nothing must not gather the states of a long night.
        dock.addListener(state -> {
            if (working) {
                states.add(state);
            }
        });
    }

    Outcome checkIn(AssetTag label, Set<VisualItem> damage) throws InterruptedException {
        long startNs = System.nanoTime();
        begin();
        fingers.scan(label.value());
        DockState seen = await(
                "the visual list of " + label,
                s -> at(s, label, Phase.LOOK) || notOnList(s, label) || alreadyIn(s, label));
        if (again && alreadyIn(seen, label)) {
            fingers.notice(NoticeAction.CHECK_IN_AGAIN);
            seen = await("the visual list of " + label, s -> at(s, label, Phase.LOOK));
        } else if (alreadyIn(seen, label)) {
            fingers.notice(NoticeAction.DISMISS);
            await("the notice to go", s -> s.notice().isEmpty());
            return new Outcome(seen.answer().orElseThrow(), List.of(), (System.nanoTime() - startNs) / 1e9);
        }
        if (seen.phase() != Phase.LOOK) {
            fingers.notice(NoticeAction.CHECK_IN_ANYWAY);
            await("the visual list of " + label, s -> at(s, label, Phase.LOOK));
        }
        fingers.lookedOver(damage);
        List<Prompt> prompts = new ArrayList<>();
        await("the answer for " + label, s -> waits(s, label) || answered(s, label));
        while (!answered(lastSeen, label)) {
            Prompt prompt = lastSeen.answer().orElseThrow().prompt();
            prompts.add(prompt);
            // A hand that cannot say which cabinet it is leaves it to a person.
            if (prompt == Prompt.CHECK_LABEL || prompts.size() > MAX_PROMPTS) {
                fingers.holdForPerson();
            } else if (prompt == Prompt.SWEEP_AGAIN) {
                fingers.sweepAgain();
            } else {
                fingers.plugged();
            }
            // The same prompt may be published more than once; it is answered once.
            await("the dock to go on with " + label, s -> !waits(s, label));
            if (!answered(lastSeen, label)) {
                await("the answer for " + label, s -> waits(s, label) || answered(s, label));
            }
        }
        double seconds = (System.nanoTime() - startNs) / 1e9;
        return new Outcome(lastSeen.answer().orElseThrow(), List.copyOf(prompts), seconds);
    }

    /** Scans something odd and returns the key of what the screen says to it. */
    String scanOdd(String text) throws InterruptedException {
        begin();
        fingers.scan(text);
        Reason words = await("words about an odd scan", s -> s.notice().isPresent())
                .notice()
                .orElseThrow()
                .text();
        fingers.notice(NoticeAction.DISMISS);
        await("the notice to go", s -> s.notice().isEmpty());
        return Reasons.text(words, Locale.ENGLISH);
    }

    /** Closes the list and waits for its sheet. */
    DockState closeList() throws InterruptedException {
        begin();
        fingers.closeList();
        return await("the return sheet", s -> s.notice().isPresent());
    }

    private void begin() {
        states.clear();
        working = true;
    }

    private DockState await(String what, Predicate<DockState> wanted) throws InterruptedException {
        while (true) {
            DockState state = states.poll(PATIENCE_S, TimeUnit.SECONDS);
            if (state == null) {
                throw new IllegalStateException("never saw " + what + "; the dock shows " + dock.state());
            }
            boolean defect = state.notice()
                    .filter(n -> n.text().key().equals("dock-defect"))
                    .isPresent();
            if (defect) {
                throw new IllegalStateException("defect at the dock while waiting for " + what + ": "
                        + state.notice().orElseThrow().text().arguments());
            }
            lastSeen = state;
            if (wanted.test(state)) {
                return state;
            }
        }
    }

    private static boolean at(DockState state, AssetTag label, Phase phase) {
        return state.phase() == phase
                && state.cabinet().filter(c -> c.tag().equals(label)).isPresent();
    }

    /** The cabinet was taken in before, by a kiosk that did not live to say so. */
    private static boolean alreadyIn(DockState state, AssetTag label) {
        return at(state, label, Phase.ANSWER)
                && state.notice()
                        .filter(n -> n.text().key().equals("dock-already-checked-in"))
                        .isPresent();
    }

    private static boolean notOnList(DockState state, AssetTag label) {
        return state.notice()
                .filter(n -> n.text().key().equals("dock-not-on-list"))
                .filter(n -> n.text().arguments().contains(label.value()))
                .isPresent();
    }

    private static boolean answered(DockState state, AssetTag label) {
        return at(state, label, Phase.ANSWER)
                && state.answer().filter(a -> a.route().isPresent()).isPresent();
    }

    private static boolean waits(DockState state, AssetTag label) {
        return at(state, label, Phase.PLUG)
                || at(state, label, Phase.ANSWER)
                        && state.answer().filter(a -> a.route().isEmpty()).isPresent();
    }
}
