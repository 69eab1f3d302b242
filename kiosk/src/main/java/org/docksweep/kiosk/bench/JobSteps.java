package org.docksweep.kiosk.bench;

import java.util.ArrayList;
import java.util.List;
import org.docksweep.contract.BenchJobBody.State;

/** Which steps a job allows. The service has the last word; this only decides what is offered. Pure functions. */
final class JobSteps {
    private JobSteps() {}

    static List<BenchStep> of(OpenJob job) {
        List<BenchStep> steps = new ArrayList<>();
        switch (job.state()) {
            case WAITING -> {
                steps.add(BenchStep.TAKE);
                listen(job, steps);
            }
            case ACCEPTED, WAITING_FOR_PART -> {
                steps.add(BenchStep.BEGIN_REPAIR);
                steps.add(BenchStep.FIND);
                steps.add(BenchStep.OTHERWISE);
                if (job.state() == State.ACCEPTED) {
                    // Nothing may be wrong, or the bare driver shall say what is.
                    steps.add(BenchStep.BEGIN_PROOF);
                }
                listen(job, steps);
            }
            case IN_REPAIR -> {
                boolean stepsLeft = job.nextStep().isPresent();
                steps.add(stepsLeft ? BenchStep.TICK : BenchStep.BEGIN_PROOF);
                steps.add(BenchStep.FIND);
                if (stepsLeft) {
                    steps.add(BenchStep.BEGIN_PROOF);
                }
                steps.add(BenchStep.OTHERWISE);
                if (job.lastTicked().isPresent()) {
                    steps.add(BenchStep.UNTICK);
                }
            }
            case PROVING -> {
                boolean proved = job.file().proof().proved();
                steps.add(proved ? BenchStep.OTHERWISE : BenchStep.SWEEP);
                steps.add(proved ? BenchStep.SWEEP : BenchStep.OTHERWISE);
                steps.add(BenchStep.DRIVER_ON_BENCH);
                steps.add(BenchStep.FIND);
                steps.add(BenchStep.BEGIN_REPAIR);
            }
            case SIGNED_OFF, SCRAPPED, RETURNED_UNREPAIRED -> {
                // Closed: only to be looked at.
            }
        }
        // In the proof the work of the card is done, and the page needs the room for what the sweeps were worth.
        if (job.state() != State.PROVING && job.file().cards().size() > 1) {
            steps.add(BenchStep.OTHER_CARD);
        }
        if (job.state() != State.PROVING && job.suggested().isPresent()) {
            steps.add(BenchStep.PRINT_CARD);
        }
        steps.add(BenchStep.BACK);
        return steps;
    }

    /** To what brought the cabinet here, before the work begins. */
    private static void listen(OpenJob job, List<BenchStep> steps) {
        if (!job.recorded().isEmpty()) {
            steps.add(BenchStep.LISTEN);
            steps.add(BenchStep.KEEP_SOUND);
        }
    }

    static List<BenchStep> endings(OpenJob job) {
        List<BenchStep> steps = new ArrayList<>();
        if (job.state() == State.PROVING && job.file().proof().proved()) {
            steps.add(BenchStep.SIGN_OFF);
        }
        steps.add(BenchStep.HAND_BACK);
        steps.add(BenchStep.RETURN_UNREPAIRED);
        steps.add(BenchStep.SCRAP);
        steps.add(BenchStep.BACK);
        return steps;
    }
}
