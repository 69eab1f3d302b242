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
    /** Characters of a refusal that have room beside the scan line. */
    private static final int WORDS_READ = 110;

    private static final String PARKED = "dock-record-parked";

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

    /** The service refused a record for good. */
    void parked(String refusal) {
        add(
                ReadingState.FAULT,
                Reason.of(PARKED, shortened(refusal)),
                null,
                NoticeAction.SEND_AGAIN,
                NoticeAction.DISMISS);
    }

    /** A refusal that another notice pushes away is told again after it. */
    void again(Notice pushedAway) {
        Word word = new Word(pushedAway, null);
        if (pushedAway.text().key().equals(PARKED) && !words.contains(word)) {
            words.addFirst(word);
        }
    }

    /** As much as is read standing; the whole of it is in the log. */
    private static String shortened(String words) {
        if (words.length() <= WORDS_READ) {
            return words;
        }
        int sentence = words.lastIndexOf(". ", WORDS_READ);
        return sentence > 0 ? words.substring(0, sentence + 1) : words.substring(0, WORDS_READ - 1) + "\u2026";
    }

    Optional<Word> next() {
        return Optional.ofNullable(words.pollFirst());
    }
}
