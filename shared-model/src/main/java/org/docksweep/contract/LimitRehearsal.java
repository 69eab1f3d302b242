package org.docksweep.contract;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.LimitSet;

/**
 * What a draft of limits would have changed, had it been in force. Stored curves are judged again under the limits their verdict
 * was made with and under the draft; where the first does not give the stored verdict back, nothing is said of the draft.
 *
 * @param draft limits tried
 * @param from start of the period
 * @param to end of the period, not part of it
 * @param looked check-ins of the period that were looked at, oldest first
 * @param left check-ins of the period that were not, because only so many are looked at in one go
 * @param goOnFrom finishing time of the first of these, or null when none is left
 * @param unchanged check-ins whose answer stays
 * @param passToFail passed, would have failed
 * @param failToPass failed, would have passed
 * @param toSweepAgain passed or failed, would have been asked to check label or socket
 * @param fromSweepAgain was asked to, would have passed or failed
 * @param watchAdded passed without a watch mark, would have got one
 * @param watchRemoved passed with a watch mark, would have got none
 * @param changes every check-in whose answer or watch mark changes
 * @param notJudged every check-in of which nothing can be said, with the reason
 */
public record LimitRehearsal(
        LimitSet draft,
        Instant from,
        Instant to,
        int looked,
        int left,
        Instant goOnFrom,
        int unchanged,
        int passToFail,
        int failToPass,
        int toSweepAgain,
        int fromSweepAgain,
        int watchAdded,
        int watchRemoved,
        List<Change> changes,
        List<NotJudged> notJudged) {

    public LimitRehearsal {
        changes = List.copyOf(changes);
        notJudged = List.copyOf(notJudged);
    }

    /**
     * Asks for a rehearsal.
     *
     * @param draft limits to try; its version is of no consequence
     * @param from start of the period
     * @param to end of the period, not part of it
     */
    public record Order(LimitSet draft, Instant from, Instant to) {}

    /**
     * A check-in that would have been answered otherwise.
     *
     * @param checkInId the check-in
     * @param tag cabinet
     * @param modelCode cabinet model
     * @param finishedAt when it was answered
     * @param before verdict as stored
     * @param watchBefore watch mark as the limits of that time give it
     * @param after verdict under the draft
     * @param watchAfter watch mark under the draft
     * @param testPointCode test point that decides
     * @param faultProbability probability there that something is wrong
     * @param misfit what the best explanation leaves over there, as limited by {@link LimitSet#misfitLimit()}
     */
    public record Change(
            UUID checkInId,
            AssetTag tag,
            String modelCode,
            Instant finishedAt,
            Verdict before,
            boolean watchBefore,
            Verdict after,
            boolean watchAfter,
            String testPointCode,
            double faultProbability,
            double misfit) {}

    /** Why nothing can be said. */
    public enum Why {
        /** Nothing was swept. */
        NOT_SWEPT,
        /** The limits of that time are not on record here. */
        LIMITS_NOT_KNOWN,
        /** There was no reference of the model at that time. */
        NO_REFERENCE,
        /** The model was changed since: its reference of that time does not fit it. */
        MODEL_CHANGED,
        /** The verdict rests on the sound, which needs the recording. */
        SOUND,
        /** A stored curve cannot be explained: not on a grid the gate uses, or no passive load. */
        CURVE_UNUSABLE,
        /** Judged again under the limits of that time, the answer is another than the one stored. */
        NOT_REPRODUCED
    }

    /**
     * A check-in of which nothing can be said.
     *
     * @param checkInId the check-in
     * @param tag cabinet
     * @param finishedAt when it was answered
     * @param verdict verdict as stored, or null
     * @param why why
     * @param words the same in words, with the test point concerned
     */
    public record NotJudged(UUID checkInId, AssetTag tag, Instant finishedAt, Verdict verdict, Why why, String words) {}
}
