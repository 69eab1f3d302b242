package org.docksweep.service.cabinets;

import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface Events extends JpaRepository<EventRow, UUID> {
    @Query("select e.tag as tag, min(e.happenedAt) as at from EventRow e where e.kind ="
            + " org.docksweep.contract.HistoryEvent.Kind.REGISTERED group by e.tag")
    List<Registration> registrations();

    /** When a cabinet came into the records. */
    interface Registration {
        String getTag();

        Instant getAt();
    }

    @Query("select e.tag as tag, e.positionCode as positionCode, max(e.happenedAt) as at from EventRow e"
            + " where e.tag = :tag and e.kind in (org.docksweep.contract.HistoryEvent.Kind.REMOVED,"
            + " org.docksweep.contract.HistoryEvent.Kind.REPAIRED,"
            + " org.docksweep.contract.HistoryEvent.Kind.SIGNED_OFF) group by e.tag, e.positionCode")
    List<LastWork> lastWork(String tag);

    @Query("select e.tag as tag, e.positionCode as positionCode, max(e.happenedAt) as at from EventRow e"
            + " where e.tag in :tags and e.kind in (org.docksweep.contract.HistoryEvent.Kind.REMOVED,"
            + " org.docksweep.contract.HistoryEvent.Kind.REPAIRED,"
            + " org.docksweep.contract.HistoryEvent.Kind.SIGNED_OFF) group by e.tag, e.positionCode")
    List<LastWork> lastWork(Collection<String> tags);

    /** When a place of a cabinet was last worked on. */
    interface LastWork {
        String getTag();

        String getPositionCode();

        Instant getAt();
    }

    @Query("select e from EventRow e where e.tag = :tag order by e.happenedAt desc, e.id desc")
    List<EventRow> newest(String tag, Limit limit);

    @Query("select e from EventRow e where e.tag = :tag"
            + " and (e.happenedAt < :at or (e.happenedAt = :at and e.id < :id)) order by e.happenedAt desc, e.id desc")
    List<EventRow> newestAfter(String tag, Instant at, UUID id, Limit limit);

    @Query(
            nativeQuery = true,
            value = "select id, tag, position_code, happened_at, done_by, kind, text_key, text_arguments_json from ("
                    + "select e.*, row_number() over (partition by e.tag order by e.happened_at desc, e.id desc) as place"
                    + " from history_event e where e.tag in (:tags)) ranked where place <= :most"
                    + " order by tag, happened_at desc, id desc")
    List<EventRow> lastOfEach(Collection<String> tags, int most);
}
