package org.docksweep.kiosk.fleet;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.docksweep.contract.CabinetBody;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.Reason;

/** Reminds of the periodic electrical safety test of powered cabinets. It blocks nothing: whoever answers for safety decides. */
public final class SafetyTests {
    /** So long before a test is due it is reminded of, in days. */
    public static final int REMINDED_DAYS = 30;

    private SafetyTests() {}

    /**
     * What is to be said of one cabinet.
     *
     * @param cabinet the cabinet
     * @param today today at the site
     * @return the reminder; empty when no test is due within 30 days, or none is known
     */
    public static Optional<Reason> reminder(CabinetBody cabinet, LocalDate today) {
        LocalDate due = cabinet.safetyTestDue();
        if (due == null || due.isAfter(today.plusDays(REMINDED_DAYS))) {
            return Optional.empty();
        }
        String key = due.isBefore(today) ? "dock-safety-test-overdue" : "dock-safety-test-due";
        return Optional.of(Reason.of(key, cabinet.tag().value(), due.toString()));
    }

    /**
     * How many cabinets of the house need their test.
     *
     * @param due due within 30 days, overdue ones included
     * @param overdue overdue
     */
    public record Count(int due, int overdue) {}

    /**
     * Counts cabinets that are not retired.
     *
     * @param cabinets cabinets
     * @param today today at the site
     * @return how many
     */
    public static Count count(List<CabinetBody> cabinets, LocalDate today) {
        int due = 0;
        int overdue = 0;
        for (CabinetBody cabinet : cabinets) {
            if (cabinet.status() != CabinetStatus.RETIRED
                    && reminder(cabinet, today).isPresent()) {
                due++;
                overdue += cabinet.safetyTestDue().isBefore(today) ? 1 : 0;
            }
        }
        return new Count(due, overdue);
    }
}
