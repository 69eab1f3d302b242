package org.docksweep.contract;

import java.time.Instant;
import java.util.UUID;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Reason;

/**
 * Something that happened to a cabinet or one of its positions. Append-only.
 *
 * @param id identity
 * @param tag cabinet
 * @param positionCode position concerned, or null for the whole cabinet
 * @param at when
 * @param by person or kiosk
 * @param kind what kind of event
 * @param text in words
 */
public record HistoryEvent(UUID id, AssetTag tag, String positionCode, Instant at, String by, Kind kind, Reason text) {

    /** Kinds of events. */
    public enum Kind {
        REGISTERED,
        INSTALLED,
        REMOVED,
        COMMISSIONED,
        SENT_OUT,
        CHECKED_IN,
        REPAIRED,
        SIGNED_OFF,
        HELD,
        RELEASED,
        MISSING,
        /** The bench took it, set it aside or gave it back. */
        AT_BENCH,
        /** The bench found something. */
        FOUND,
        /** A sweep of the bench proof. */
        PROVED,
        SCRAPPED,
        NOTE
    }
}
