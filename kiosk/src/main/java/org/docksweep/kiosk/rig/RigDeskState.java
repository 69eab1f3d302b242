package org.docksweep.kiosk.rig;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.docksweep.fleet.Reason;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.rig.audio.AudioDevices;

/**
 * What the rig page shows: one immutable picture at a time.
 *
 * @param mode what the person is doing
 * @param standing how the rig stands, in words
 * @param standingState OK, WATCH or FAULT
 * @param message last thing that happened; empty when there is nothing to say
 * @param calibrated newest calibration; empty when there is none
 * @param checked newest check; empty when there is none
 * @param commonMode newest common-mode check; empty when there is none
 * @param charts control chart of every check standard since the calibration
 * @param contacts contact of the dock's plug since the calibration, by the short plug
 * @param plugs the same by the curves of cabinets
 * @param studied repeatability study in force; empty when there is none
 * @param sound the microphone's checks
 * @param levels levels of the inputs; empty when nothing was listened to
 * @param sounding whether the rig plays or listens now
 * @param share share of the measurement done, 0 to 1
 * @param walk the walk; present in mode WALK
 * @param setUp set-up as last saved
 * @param devices devices of this machine as last looked for
 * @param canSetUp whether this rig has anything to set up
 */
public record RigDeskState(
        Mode mode,
        Reason standing,
        ReadingState standingState,
        Optional<Message> message,
        Optional<RigEntry.Calibrated> calibrated,
        Optional<RigEntry.Checked> checked,
        Optional<RigEntry.CommonMode> commonMode,
        List<CheckChart> charts,
        List<ContactTrend> contacts,
        List<PlugTrend> plugs,
        Optional<RigEntry.Studied> studied,
        RigSound sound,
        List<ChannelLevel> levels,
        boolean sounding,
        double share,
        Optional<Walk> walk,
        RigSetUp setUp,
        List<AudioDevices.Device> devices,
        boolean canSetUp) {

    public RigDeskState {
        charts = List.copyOf(charts);
        contacts = List.copyOf(contacts);
        plugs = List.copyOf(plugs);
        levels = List.copyOf(levels);
        devices = List.copyOf(devices);
        if ((mode == Mode.WALK) != walk.isPresent()) {
            throw new IllegalArgumentException("a walk belongs to mode WALK and to no other");
        }
    }

    /** What the person is doing. */
    public enum Mode {
        /** Looking at how the rig stands. */
        OVERVIEW,
        /** Walking through a calibration, a check or a repeatability study. */
        WALK,
        /** Setting the rig up. */
        SET_UP
    }

    /**
     * A sentence.
     *
     * @param words the sentence
     * @param state how serious it is
     */
    public record Message(Reason words, ReadingState state) {}

    /**
     * A walk.
     *
     * @param calibrating whether it is a calibration, otherwise the daily check, a study or a check of the microphone
     * @param steps its steps in order
     * @param at step at hand, from 0; their number when all are done
     * @param loadOhm value of the load standard, in ohm
     * @param checkNames names of the check standards, of the parts of the study, or of the known cabinet
     * @param contacts pair of contacts at hand
     */
    public record Walk(
            boolean calibrating, List<Step> steps, int at, double loadOhm, List<String> checkNames, String contacts) {
        public Walk {
            steps = List.copyOf(steps);
            checkNames = List.copyOf(checkNames);
        }

        /**
         * Whether it is a repeatability study.
         *
         * @return true if so
         */
        public boolean isStudy() {
            return WalkStep.STUDY.contains(steps.get(0).step());
        }

        /**
         * Whether it is a check of the microphone.
         *
         * @return true if so
         */
        public boolean isSound() {
            return steps.get(0).step() == WalkStep.SOUND;
        }

        /**
         * Whether all steps are behind.
         *
         * @return true at the end
         */
        public boolean finished() {
            return at >= steps.size();
        }
    }

    /**
     * A step of a walk.
     *
     * @param step which
     * @param state OK when done, FAULT when refused or failed, WATCH when left out, NOT_JUDGED when not yet measured
     * @param words what was seen; empty before it is measured
     */
    public record Step(WalkStep step, ReadingState state, Optional<Reason> words) {}

    /**
     * When the newest check was made.
     *
     * @return instant; empty without one
     */
    public Optional<Instant> checkedAt() {
        return checked.map(RigEntry.Checked::at);
    }
}
