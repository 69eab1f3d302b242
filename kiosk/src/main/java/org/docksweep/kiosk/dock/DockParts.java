package org.docksweep.kiosk.dock;

import java.time.Clock;
import java.util.function.Supplier;
import org.docksweep.kiosk.printing.Papers;
import org.docksweep.kiosk.rig.Lead;
import org.docksweep.kiosk.rig.PlugLog;
import org.docksweep.kiosk.rig.RecordingKeeper;
import org.docksweep.kiosk.rig.RigStanding;
import org.docksweep.kiosk.spool.Spool;
import org.docksweep.sweep.Rig;

/**
 * What the dock works with. It closes none of these.
 *
 * @param spool memory
 * @param rig rig
 * @param lead test lead of the rig
 * @param standing how the rig stands now
 * @param gate measurement and judgement
 * @param recordings folder of recordings
 * @param papers printer
 * @param link way to the service
 * @param clock time
 * @param settings settings
 * @param plugs keeps what the curves say of the dock's plug
 */
public record DockParts(
        Spool spool,
        Rig rig,
        Lead lead,
        Supplier<RigStanding> standing,
        Gate gate,
        RecordingKeeper recordings,
        Papers papers,
        Link link,
        Clock clock,
        DockSettings settings,
        PlugLog plugs) {

    /**
     * Parts that keep nothing of the plug.
     *
     * @param spool memory
     * @param rig rig
     * @param lead test lead of the rig
     * @param standing how the rig stands now
     * @param gate measurement and judgement
     * @param recordings folder of recordings
     * @param papers printer
     * @param link way to the service
     * @param clock time
     * @param settings settings
     */
    public DockParts(
            Spool spool,
            Rig rig,
            Lead lead,
            Supplier<RigStanding> standing,
            Gate gate,
            RecordingKeeper recordings,
            Papers papers,
            Link link,
            Clock clock,
            DockSettings settings) {
        this(spool, rig, lead, standing, gate, recordings, papers, link, clock, settings, PlugLog.NONE);
    }

    /**
     * The same with another way to plug.
     *
     * @param other lead to use instead
     * @return other parts
     */
    public DockParts withLead(Lead other) {
        return new DockParts(spool, rig, other, standing, gate, recordings, papers, link, clock, settings, plugs);
    }

    /**
     * The same for another person.
     *
     * @param operator person signed on
     * @return other parts
     */
    public DockParts withOperator(String operator) {
        DockSettings theirs = new DockSettings(
                settings.kioskId(), settings.kioskNumber(), operator, settings.locale(), settings.answerStays());
        return new DockParts(spool, rig, lead, standing, gate, recordings, papers, link, clock, theirs, plugs);
    }
}
