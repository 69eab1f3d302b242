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

    @Query("select p.driverModelCode as driverModelCode, count(p) as checkIns,"
            + " sum(case when p.state = org.docksweep.gate.ReadingState.FAULT then 1 else 0 end) as failures"
            + " from CheckIn c join c.positions p where c.finishedAt >= :since and p.driverModelCode is not null"
            + " group by p.driverModelCode order by p.driverModelCode")
    List<Faults> faultsSince(Instant since);

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
