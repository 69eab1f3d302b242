package org.docksweep.kiosk.dock;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Reason;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.dock.DockState.Notice;
import org.docksweep.kiosk.dock.DockState.NoticeAction;

/** What has to be told but must not push away the notice a person is answering. Lives on the dock's thread only. */
final class Untold {
    private final Deque<Word> words = new ArrayDeque<>();

    /**
     * A notice that waits.
     *
     * @param notice the notice
     * @param tag cabinet its actions mean, or null
     */
    record Word(Notice notice, AssetTag tag) {}

    void add(ReadingState state, Reason text, AssetTag tag, NoticeAction... actions) {
        Word word = new Word(new Notice(state, text, List.of(actions)), tag);
        if (!words.contains(word)) {
            words.addLast(word);
        }
    }

    Optional<Word> next() {
        return Optional.ofNullable(words.pollFirst());
    }
}
