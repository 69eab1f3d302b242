package org.docksweep.kiosk.rig;

import java.time.Clock;
import java.util.List;
import java.util.function.Supplier;
import org.docksweep.kiosk.rig.audio.AudioDevices;
import org.docksweep.sweep.Rig;
import org.docksweep.sweep.RigException;

/**
 * What the rig page works with. It closes none of these.
 *
 * @param rig rig
 * @param book its book
 * @param standing how it stands now
 * @param hand who plugs standards
 * @param setUp set-up it was opened with
 * @param standards standards for a set-up
 * @param changer puts a set-up to work; null where there is nothing to set up
 * @param levels gives levels for a set-up
 * @param devices looks for devices
 * @param signedOn who is signed on now; asked whenever something is written into the book
 * @param clock time
 * @param cabinets finds cabinets for a repeatability study
 */
public record RigDeskParts(
        Rig rig,
        RigBook book,
        Supplier<RigStanding> standing,
        StandardsHand hand,
        RigSetUp setUp,
        StandardsOf standards,
        Changer changer,
        LevelsOf levels,
        Supplier<List<AudioDevices.Device>> devices,
        Supplier<String> signedOn,
        Clock clock,
        StudyCabinet.Finder cabinets) {

    /**
     * Person signed on now.
     *
     * @return a name
     */
    public String operator() {
        return signedOn.get();
    }

    /** Standards for a set-up. */
    @FunctionalInterface
    public interface StandardsOf {
        /**
         * The standards.
         *
         * @param setUp set-up
         * @return standards
         */
        StandardSet of(RigSetUp setUp);
    }

    /** Puts a set-up to work. */
    @FunctionalInterface
    public interface Changer {
        /**
         * Opens the rig anew.
         *
         * @param setUp set-up without problems
         * @throws RigException if the rig refuses
         */
        void change(RigSetUp setUp) throws RigException;
    }

    /** Levels for a set-up. */
    @FunctionalInterface
    public interface LevelsOf {
        /**
         * A source of levels.
         *
         * @param setUp set-up, which need not be saved
         * @param tone whether a quiet tone plays
         * @return the source
         * @throws IllegalArgumentException if the set-up is wrong
         */
        LevelSource of(RigSetUp setUp, boolean tone);
    }
}
