package org.docksweep.kiosk.rig;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPoint;
import org.docksweep.sweep.SweepAnalysis;

/** A walk along the rig as the desk sees it: something is plugged, swept, and taken or refused. */
interface DeskWalk {
    /** Rated impedance written on standards; only the level mask of the point counts. */
    double POINT_OHM = 8;

    boolean finished();

    /** Step at hand; only before the walk is finished. */
    WalkStep step();

    /** Lets the practice rig plug what the step asks for; does nothing where a person has. */
    default void plug(StandardsHand hand, Lead lead) {
        hand.plug(step());
    }

    /** What must be said or done before anything is measured; nothing when it may be. */
    default Optional<Reason> notYet() {
        return Optional.empty();
    }

    /** What is swept, with its level mask. */
    default TestPoint point() {
        return StandardSet.testPoint(POINT_OHM);
    }

    /** Whether a quiet probe must show a load before the sweep: cabinets are not all alike, standards bear everything. */
    default boolean probesFirst() {
        return false;
    }

    /** Whether the microphone counts; it is left out where it does not, since hearing costs more than reading the current. */
    default boolean listens() {
        return false;
    }

    /** Sweeps of the step, without touching the plug. */
    default int sweeps() {
        return 1;
    }

    /**
     * Looks at the probe.
     *
     * @return why it is not swept, or nothing
     */
    default Optional<RigDeskState.Message> probed(SweepAnalysis probe) {
        return Optional.empty();
    }

    /**
     * Takes the sweeps of the step at hand.
     *
     * @return what is to be said
     * @throws IOException if the book cannot be written; then the step was not taken
     */
    RigDeskState.Message take(List<SweepAnalysis> sweeps) throws IOException;

    void back();

    default void skip() {
        // Most steps may not be left out.
    }

    default void loadOhm(double ohm) {
        // Only a calibration has a load.
    }

    default void acceptAnew() {
        // Only the check of the microphone has something accepted.
    }

    default void otherContacts() {
        // Only the check of the plug chooses contacts.
    }

    /**
     * Takes a cabinet as the part at hand.
     *
     * @return what is to be said; empty where no cabinet is wanted
     */
    default Optional<RigDeskState.Message> cabinet(StudyCabinet cabinet) {
        return Optional.empty();
    }

    RigDeskState.Walk state();
}
