package org.docksweep.service.checkins;

import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.docksweep.fleet.Verdict;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface CheckInRows extends JpaRepository<CheckIn, UUID> {
    List<CheckIn> findByReturnListIdOrderByFinishedAtAscIdAsc(UUID returnListId);

    @Query("select c from CheckIn c where c.tag in :tags and c.receivedAt >= :from and c.receivedAt <= :to"
            + " order by c.finishedAt, c.id")
    List<CheckIn> received(Collection<String> tags, Instant from, Instant to);

    @Query("select c.id from CheckIn c where c.finishedAt >= :from and c.finishedAt < :to"
            + " order by c.finishedAt, c.id")
    List<UUID> finished(Instant from, Instant to, Limit limit);

    int countByFinishedAtGreaterThanEqualAndFinishedAtLessThan(Instant from, Instant to);

    @Query("select p.driverModelCode as driverModelCode, count(*) as checkIns,"
            + " sum(case when p.state = org.docksweep.gate.ReadingState.FAULT then 1 else 0 end) as failures"
            + " from CheckIn c join c.positions p where c.finishedAt >= :since and p.driverModelCode is not null"
            + " group by p.driverModelCode order by p.driverModelCode")
    List<Faults> faultsSince(Instant since);

    /** Back to the newest, second, ... to the sixth of these instants, in one pass: on a large house each pass takes seconds. */
    @Query("select p.driverModelCode as driverModelCode,"
            + " sum(case when c.finishedAt >= :first then 1 else 0 end) as first,"
            + " sum(case when c.finishedAt >= :second then 1 else 0 end) as second,"
            + " sum(case when c.finishedAt >= :third then 1 else 0 end) as third,"
            + " sum(case when c.finishedAt >= :fourth then 1 else 0 end) as fourth,"
            + " sum(case when c.finishedAt >= :fifth then 1 else 0 end) as fifth,"
            + " count(*) as sixth"
            + " from CheckIn c join c.positions p where c.finishedAt >= :sixth and p.driverModelCode is not null"
            + " group by p.driverModelCode order by p.driverModelCode")
    List<Returned> returnedSince(
            Instant first, Instant second, Instant third, Instant fourth, Instant fifth, Instant sixth);

    /** How often a driver model came back, back to one instant after the other. */
    interface Returned {
        String getDriverModelCode();

        long getFirst();

        long getSecond();

        long getThird();

        long getFourth();

        long getFifth();

        long getSixth();
    }

    @Query("select c.id as id, c.tag as tag, c.finishedAt as finishedAt, c.verdict as verdict from CheckIn c"
            + " where c.tag in :tags order by c.finishedAt desc, c.id")
    List<Header> headers(Collection<String> tags);

    /** What is counted and looked up of a check-in. */
    interface Header {
        UUID getId();

        String getTag();

        Instant getFinishedAt();

        Verdict getVerdict();
    }

    /** Failures of a driver model. */
    interface Faults {
        String getDriverModelCode();

        long getCheckIns();

        long getFailures();
    }
}
