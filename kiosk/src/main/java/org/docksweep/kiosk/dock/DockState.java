package org.docksweep.kiosk.dock;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Route;
import org.docksweep.fleet.Verdict;
import org.docksweep.fleet.VisualItem;
import org.docksweep.gate.ReadingState;
import org.docksweep.judge.DecidingCurve;
import org.docksweep.judge.PositionState;
import org.docksweep.judge.Prompt;
import org.docksweep.kiosk.spool.Trouble;
import org.docksweep.suspect.Suspect;

/**
 * What the dock page shows: one immutable picture at a time. The page holds no knowledge of its own.
 *
 * @param phase where the check-in stands
 * @param strip top strip
 * @param returns return list with its progress; empty when no list is open
 * @param scans last scans, newest first
 * @param notice a message beside the scan line, with at most two actions; empty when there is nothing to say
 * @param cabinet the cabinet at hand; empty before the first scan
 * @param visualDamage items of the visual list marked as not fine
 * @param curve curve to draw; empty before the first sweep
 * @param progress test point and how far its sweep has come; present while probing and sweeping, and with share 0
 *     while waiting for the plug
 * @param answer the answer; stays until the next scan. Present in phase ANSWER
 */
public record DockState(
        Phase phase,
        Strip strip,
        Optional<Returns> returns,
        List<ScanEcho> scans,
        Optional<Notice> notice,
        Optional<CabinetAtHand> cabinet,
        Set<VisualItem> visualDamage,
        Optional<CurvePicture> curve,
        Optional<SweepProgress> progress,
        Optional<Answer> answer) {

    public DockState {
        scans = List.copyOf(scans);
        visualDamage = Set.copyOf(visualDamage);
        boolean atTestPoint = phase == Phase.PLUG || phase == Phase.PROBE || phase == Phase.SWEEP;
        require(!atTestPoint || progress.isPresent(), phase, "the test point in its progress");
        require(phase != Phase.ANSWER || answer.isPresent(), phase, "an answer");
        require(phase == Phase.READY || cabinet.isPresent(), phase, "a cabinet at hand");
    }

    private static void require(boolean there, Phase phase, String what) {
        if (!there) {
            throw new IllegalArgumentException("a dock state in phase " + phase + " needs " + what + ", but has none");
        }
    }

    /** Where the check-in stands. */
    public enum Phase {
        /** Waiting for a scan. */
        READY,
        /** Scanned: the visual list is open; "all fine" or taps, then sweep. */
        LOOK,
        /** Waiting for the plug: nothing connected, or the next test point of the cabinet. */
        PLUG,
        /** Quiet probe. */
        PROBE,
        /** Sweeping: only stop is allowed; scans are queued. */
        SWEEP,
        /** Capture done, judging. */
        JUDGE,
        /** Answer on screen. */
        ANSWER
    }

    /**
     * Top strip.
     *
     * @param siteName house
     * @param rig rig state in words
     * @param rigState OK, WATCH (check due) or FAULT
     * @param waitingToSend records not yet at the service
     * @param refused records among them that the service refused; a person must deal with them
     * @param trouble why the last record could not be sent; empty when it was
     * @param operator person signed on
     * @param now time
     */
    public record Strip(
            String siteName,
            Reason rig,
            ReadingState rigState,
            int waitingToSend,
            int refused,
            Optional<Trouble> trouble,
            String operator,
            Instant now) {

        /**
         * Whether the last record could be sent.
         *
         * @return true also before the first one
         */
        public boolean serviceReachable() {
            return trouble.isEmpty();
        }

        /** A strip without refused records, of a service that answers or does not. */
        public Strip(
                String siteName,
                Reason rig,
                ReadingState rigState,
                int waitingToSend,
                boolean serviceReachable,
                String operator,
                Instant now) {
            this(
                    siteName,
                    rig,
                    rigState,
                    waitingToSend,
                    0,
                    serviceReachable ? Optional.empty() : Optional.of(Trouble.UNREACHABLE),
                    operator,
                    now);
        }
    }

    /**
     * Return list with its progress.
     *
     * @param orderNumber order
     * @param customer customer
     * @param due cabinets due
     * @param back cabinets back
     * @param failed cabinets of the list that did not go to the shelf
     * @param models one row per model
     * @param unexpected cabinets that came but are not on the list
     */
    public record Returns(
            String orderNumber,
            String customer,
            int due,
            int back,
            int failed,
            List<ModelTally> models,
            List<Slot> unexpected) {}

    /**
     * One model of the return list.
     *
     * @param model model
     * @param slots one per cabinet due, in list order
     */
    public record ModelTally(CabinetModel model, List<Slot> slots) {}

    /**
     * One cabinet of the list.
     *
     * @param tag asset tag
     * @param state what became of it
     */
    public record Slot(AssetTag tag, SlotState state) {}

    /** What became of a cabinet that is due. */
    public enum SlotState {
        NOT_YET,
        AT_HAND,
        SHELF,
        WATCH,
        BENCH,
        HOLD
    }

    /**
     * A scan in the trail.
     *
     * @param text what was read
     * @param at when
     * @param outcome in words
     * @param state how it went
     */
    public record ScanEcho(String text, Instant at, Reason outcome, ReadingState state) {}

    /**
     * A message beside the scan line.
     *
     * @param state how serious
     * @param text sentence with what to do
     * @param actions at most two
     */
    public record Notice(ReadingState state, Reason text, List<NoticeAction> actions) {
        public Notice {
            actions = List.copyOf(actions);
            if (actions.size() > 2) {
                throw new IllegalArgumentException("a notice offers at most two actions, but has " + actions.size());
            }
        }
    }

    /** Actions a notice can offer. */
    public enum NoticeAction {
        /** Register the unknown cabinet. */
        REGISTER,
        /** Check the unexpected cabinet in all the same. */
        CHECK_IN_ANYWAY,
        /** Forget the scan. */
        DISMISS,
        /** Show the earlier result of this cabinet. */
        SHOW_EARLIER,
        /** Sweep this cabinet again from the start. */
        CHECK_IN_AGAIN,
        /** Send the records again that the service refused. */
        SEND_AGAIN,
        /** Print the return sheet of the list closed last once more. */
        SHEET_AGAIN
    }

    /**
     * The cabinet at hand.
     *
     * @param tag asset tag
     * @param model model
     * @param shelfPlace its place
     * @param positions state of each driver position; NOT_JUDGED before the sweep
     * @param recent last events, newest first
     * @param queuedScan a tag scanned meanwhile, which comes next
     */
    public record CabinetAtHand(
            AssetTag tag,
            CabinetModel model,
            String shelfPlace,
            List<PositionState> positions,
            List<HistoryEvent> recent,
            Optional<AssetTag> queuedScan) {}

    /**
     * A curve over its reference ribbon: magnitudes in ohm for impedance, levels in dB for what the microphone heard. The ribbon of
     * bursts is what noise alone would show.
     *
     * @param testPointCode test point
     * @param shows what it shows
     * @param frequencyHz measured frequencies
     * @param measured measured values; may be shorter than the frequencies while the sweep still runs
     * @param ribbonHz frequencies of the ribbon, empty without a reference
     * @param ribbonLow lower edge
     * @param ribbonHigh upper edge
     * @param baseline own baseline on ribbonHz, or empty
     * @param decidedFromHz lower end of the region that decided, or 0
     * @param decidedToHz upper end of the region that decided, or 0
     * @param predictedHz frequencies of what the first suspect predicts, or empty
     * @param predicted what it predicts there, or empty
     */
    public record CurvePicture(
            String testPointCode,
            DecidingCurve shows,
            double[] frequencyHz,
            double[] measured,
            double[] ribbonHz,
            double[] ribbonLow,
            double[] ribbonHigh,
            double[] baseline,
            double decidedFromHz,
            double decidedToHz,
            double[] predictedHz,
            double[] predicted) {
        private static final double[] NOTHING = {};

        /** A curve without a suspect that predicts one. */
        public CurvePicture(
                String testPointCode,
                DecidingCurve shows,
                double[] frequencyHz,
                double[] measured,
                double[] ribbonHz,
                double[] ribbonLow,
                double[] ribbonHigh,
                double[] baseline,
                double decidedFromHz,
                double decidedToHz) {
            this(
                    testPointCode,
                    shows,
                    frequencyHz,
                    measured,
                    ribbonHz,
                    ribbonLow,
                    ribbonHigh,
                    baseline,
                    decidedFromHz,
                    decidedToHz,
                    NOTHING,
                    NOTHING);
        }
    }

    /**
     * Sweep progress.
     *
     * @param testPointCode test point being swept
     * @param contacts contacts of that test point
     * @param share share done, 0 to 1
     * @param attempt 1 to 3
     */
    public record SweepProgress(String testPointCode, String contacts, double share, int attempt) {}

    /**
     * The answer.
     *
     * @param verdict verdict, or empty while a prompt is open or when held without a sweep
     * @param prompt what the person must do, or NONE
     * @param route where the cabinet goes; empty while a prompt is open
     * @param place the place in words, for example shelf C-04
     * @param watch whether it gets a watch mark
     * @param reason one sentence why
     * @param suspects suspects, most probable first
     * @param jobCode job code on the tag, when it goes to the bench
     * @param tagPrint state of the tag print
     */
    public record Answer(
            Optional<Verdict> verdict,
            Prompt prompt,
            Optional<Route> route,
            String place,
            boolean watch,
            Reason reason,
            List<Suspect> suspects,
            Optional<JobCode> jobCode,
            TagPrint tagPrint) {
        public Answer {
            suspects = List.copyOf(suspects);
            if (route.isEmpty() && prompt == Prompt.NONE) {
                throw new IllegalArgumentException("an answer needs a route or a prompt, but has neither");
            }
            boolean held = route.isEmpty() || route.get() == Route.SAFETY_HOLD || route.get() == Route.MANUAL_HOLD;
            if (!held && verdict.isEmpty()) {
                throw new IllegalArgumentException(
                        "an answer to the " + route.get() + " needs a verdict; without one a cabinet is only held");
            }
        }
    }

    /** State of the tag print. */
    public enum TagPrint {
        NOT_NEEDED,
        PRINTING,
        PRINTED,
        /** The print queue has it and stands still. */
        WAITS_AT_PRINTER,
        /** No printer: the PDF lies in the folder for papers. */
        SAVED_TO_FOLDER,
        FAILED
    }
}
