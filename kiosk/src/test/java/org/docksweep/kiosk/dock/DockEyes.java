package org.docksweep.kiosk.dock;

import java.time.Duration;
import java.util.Set;
import java.util.function.Predicate;
import org.docksweep.fleet.AssetTag;
import org.docksweep.kiosk.dock.DockState.Phase;

/** Somebody in front of a dock: waits until it shows what was expected, and works one cabinet. */
abstract class DockEyes {
    /** Far beyond any wait on a busy machine; only a hang reaches it. */
    static final long PATIENCE_S = 20;

    private final Object changed = new Object();
    private Dock watched;

    final void watch(Dock dock) {
        watched = dock;
        dock.addListener(state -> {
            synchronized (changed) {
                changed.notifyAll();
            }
        });
    }

    /** Waits until the newest state is as wanted. */
    DockState await(String what, Predicate<DockState> wanted) throws InterruptedException {
        long deadline = System.nanoTime() + Duration.ofSeconds(PATIENCE_S).toNanos();
        synchronized (changed) {
            while (!wanted.test(watched.state())) {
                long leftMs = (deadline - System.nanoTime()) / 1_000_000;
                if (leftMs <= 0) {
                    throw new AssertionError("never saw " + what + "; the dock shows " + watched.state());
                }
                changed.wait(Math.min(leftMs, 200));
            }
            return watched.state();
        }
    }

    DockState look(AssetTag tag) throws InterruptedException {
        watched.scan(tag.value());
        return await("the visual list of " + tag, s -> s.phase() == Phase.LOOK && holds(s, tag));
    }

    DockState answer(AssetTag tag) throws InterruptedException {
        return await(
                "the route of " + tag,
                s -> s.phase() == Phase.ANSWER
                        && holds(s, tag)
                        && s.answer().filter(a -> a.route().isPresent()).isPresent());
    }

    DockState checkIn(AssetTag tag) throws InterruptedException {
        look(tag);
        watched.lookedOver(Set.of());
        return answer(tag);
    }

    DockState notice(String key) throws InterruptedException {
        return await(
                "the notice " + key,
                s -> s.notice().filter(n -> n.text().key().equals(key)).isPresent());
    }

    private static boolean holds(DockState state, AssetTag tag) {
        return state.cabinet().filter(c -> c.tag().equals(tag)).isPresent();
    }
}
