package org.docksweep.kiosk.night;

import java.util.List;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.DemoHouse;

/** The truckload of a night, cabinet by cabinet, with the scans that go wrong among it. */
final class NightTruck {
    private final List<DemoHouse.Arrival> arrivals;
    private final NightReport report;
    private final TruthTable truth = new TruthTable();

    NightTruck(DemoHouse house, NightReport report) {
        this.arrivals = house.arrivals();
        this.report = report;
    }

    /** Lists what comes off, for somebody who types the labels. */
    void list() {
        for (DemoHouse.Arrival arrival : arrivals) {
            report.say(
                    "%s%s",
                    arrival.label(), arrival.visualDamage().isEmpty() ? "" : "  not fine: " + arrival.visualDamage());
        }
    }

    /**
     * Takes all of it in.
     *
     * @param kiosk where
     * @param hand by whom
     * @param pace called with the index of each cabinet, from 0, before it is scanned
     * @return the comparison with the truth
     * @throws InterruptedException if stopped
     */
    TruthTable takeIn(NightKiosk kiosk, DockHand hand, NightPace pace) throws InterruptedException {
        for (int i = 0; i < arrivals.size(); i++) {
            pace.before(i);
            if (i > 0) {
                oddScan(i - 1, hand);
            }
            DemoHouse.Arrival arrival = arrivals.get(i);
            DockHand.Outcome outcome = hand.checkIn(arrival.label(), arrival.visualDamage());
            CheckInBody body = kiosk.spool().newestCheckIn(arrival.label()).orElseThrow();
            truth.add(arrival, body, outcome.prompts());
            report.result(i + 1, arrivals.size(), body, outcome);
        }
        return truth;
    }

    /** A real night is never clean: an unknown tag, the same tag twice, two labels in one scan. */
    private void oddScan(int index, DockHand hand) throws InterruptedException {
        String label = arrivals.get(index).label().value();
        String text = switch (index) {
            case 2 -> "ZZZ-999999";
            case 6 -> label;
            case 10 -> label + arrivals.get(0).label().value();
            default -> null;
        };
        if (text != null) {
            report.say("         odd scan \"%s\": %s", text, hand.scanOdd(text));
        }
    }
}
