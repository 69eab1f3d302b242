package org.docksweep.kiosk.bench;

import java.time.Duration;
import java.time.Instant;
import org.docksweep.contract.BenchActionBody;
import org.docksweep.contract.BenchActionBody.Verb;
import org.docksweep.fleet.Reason;

/** The end of the work on a job: minutes of labour and, where it must be said, why. Lives on the bench's thread. */
final class JobEnding {
    /** Labour is written down in steps of this; common practice, no source. */
    private static final int LABOUR_STEP_MINUTES = 5;

    private int labourMinutes;
    private String why;

    /** Proposes the minutes since this bench took the job. */
    JobEnding(OpenJob job, Instant now) {
        Instant taken = job.file().actions().stream()
                .filter(a -> a.verb() == Verb.ACCEPT)
                .map(BenchActionBody::at)
                .reduce((first, second) -> second)
                .orElse(now);
        long minutes = Math.max(0, Duration.between(taken, now).toMinutes());
        labourMinutes = (int) ((minutes / LABOUR_STEP_MINUTES + 1) * LABOUR_STEP_MINUTES);
    }

    void typed(String text) {
        if (text.matches("[0-9]{1,4}")) {
            labourMinutes = Integer.parseInt(text);
        } else {
            why = text;
        }
    }

    /** Whether words are missing without which a job is not closed this way. */
    boolean needsWords(Verb verb) {
        return why == null && (verb == Verb.SCRAP || verb == Verb.RETURN_UNREPAIRED);
    }

    BenchOffice.Words words(Verb verb) {
        return new BenchOffice.Words(null, why, verb == Verb.HAND_BACK ? null : Integer.valueOf(labourMinutes));
    }

    Reason prompt() {
        return Reason.of("bench-ask-ending", Integer.toString(labourMinutes), why == null ? "-" : why);
    }
}
