package org.docksweep.kiosk.bench;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.docksweep.contract.BenchJobBody;
import org.docksweep.contract.BenchJobFile;
import org.docksweep.contract.FitAnswer;
import org.docksweep.contract.PartExchangeBody;
import org.docksweep.contract.PartStock;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ProcedureCard;
import org.docksweep.fleet.Reason;
import org.docksweep.gate.ReadingState;
import org.docksweep.judge.PositionState;
import org.docksweep.kiosk.dock.DockState.CurvePicture;

/**
 * What the bench page shows: one immutable picture at a time.
 *
 * @param activity what is being done
 * @param queue open jobs, most urgent first
 * @param marked index of the marked job, or -1 when the queue is empty
 * @param job job at hand; present in every activity but QUEUE
 * @param prompt what is asked for now
 * @param message what came of the last step; empty when there is nothing to say
 * @param steps steps that can be taken, the expected one first
 * @param choices choices of the finding
 * @param part part at hand; present in activity PART
 * @param sweepShare how far the sweep has come, 0 to 1; present while one plays
 * @param busy whether something slow goes on, so that only stop is heard
 */
public record BenchState(
        Activity activity,
        List<BenchJobBody> queue,
        int marked,
        Optional<JobAtHand> job,
        Reason prompt,
        Optional<Message> message,
        List<BenchStep> steps,
        List<Choice> choices,
        Optional<PartAtHand> part,
        Optional<Double> sweepShare,
        boolean busy) {

    /** What is being done. */
    public enum Activity {
        /** Looking for work. */
        QUEUE,
        /** A job is open. */
        JOB,
        /** Writing a finding. */
        FINDING,
        /** Putting a part in. */
        PART,
        /** The bench proof. */
        PROOF,
        /** Ending the work. */
        ENDING
    }

    public BenchState {
        queue = List.copyOf(queue);
        steps = List.copyOf(steps);
        choices = List.copyOf(choices);
        if (marked < -1 || marked >= queue.size()) {
            throw new IllegalArgumentException("job " + marked + " is marked, but the queue has " + queue.size());
        }
        if (activity != Activity.QUEUE && job.isEmpty()) {
            throw new IllegalArgumentException("a bench state in activity " + activity + " needs a job at hand");
        }
        if (activity == Activity.PART && part.isEmpty()) {
            throw new IllegalArgumentException("a bench state in activity PART needs a part at hand");
        }
    }

    /**
     * A sentence with its weight.
     *
     * @param state weight
     * @param text sentence
     */
    public record Message(ReadingState state, Reason text) {}

    /**
     * The job at hand.
     *
     * @param file everything the service has of it
     * @param model cabinet model
     * @param positions state of its positions: by the newest proof sweep here, else by the check-in
     * @param curve curve of the same, if it has one
     * @param card procedure shown, if one is suggested
     */
    public record JobAtHand(
            BenchJobFile file,
            CabinetModel model,
            List<PositionState> positions,
            Optional<CurvePicture> curve,
            Optional<CardAtHand> card) {}

    /**
     * A procedure with its ticks.
     *
     * @param card the card
     * @param positionCode driver position it is used for, or null
     * @param done codes of ticked steps
     * @param number which of the suggested cards it is, from 1
     * @param count how many are suggested
     */
    public record CardAtHand(ProcedureCard card, String positionCode, Set<String> done, int number, int count) {
        public CardAtHand {
            done = Set.copyOf(done);
        }

        /**
         * The step to do next.
         *
         * @return the first step without a tick; empty when all are ticked
         */
        public Optional<ProcedureCard.Step> next() {
            return card.steps().stream().filter(s -> !done.contains(s.code())).findFirst();
        }
    }

    /**
     * A choice of the finding.
     *
     * @param code what is typed for it
     * @param value what it stands for
     * @param taken whether it is taken
     */
    public record Choice(String code, Enum<?> value, boolean taken) {}

    /**
     * A part about to be put in.
     *
     * @param stock the part and what is there of it
     * @param serial serial scanned, or null
     * @param fit whether it fits the place
     * @param positionCode driver position, or null
     * @param elementId crossover part it replaces, or null
     * @param fate what becomes of the one taken out
     */
    public record PartAtHand(
            PartStock stock,
            String serial,
            FitAnswer fit,
            String positionCode,
            String elementId,
            PartExchangeBody.Fate fate) {
        /**
         * Whether a serial is still missing.
         *
         * @return true if the part carries serials and none was scanned
         */
        public boolean needsSerial() {
            return stock.part().serialised() && serial == null;
        }
    }
}
