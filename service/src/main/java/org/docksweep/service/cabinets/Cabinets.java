package org.docksweep.service.cabinets;

import jakarta.persistence.LockModeType;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.docksweep.fleet.CabinetStatus;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Lock;
import org.springframework.data.jpa.repository.Query;

interface Cabinets extends JpaRepository<Cabinet, String> {
    List<Cabinet> findByTagGreaterThanOrderByTag(String after, Limit limit);

    List<Cabinet> findByStatusAndTagGreaterThanOrderByTag(CabinetStatus status, String after, Limit limit);

    List<Cabinet> findAllByOrderByTag();

    @Query("select c from Cabinet c where c.changedAt > :since or exists (select 1 from Installation i"
            + " where i.tag = c.tag and i.changedAt > :since) order by c.tag")
    List<Cabinet> changedAfter(Instant since);

    @Lock(LockModeType.PESSIMISTIC_WRITE)
    @Query("select c from Cabinet c where c.tag = :tag")
    Optional<Cabinet> findLocked(String tag);

    @Query("select c.modelCode as modelCode, c.status as status, count(c) as units from Cabinet c"
            + " group by c.modelCode, c.status")
    List<StatusCount> countByModelAndStatus();

    /** Cabinets of one model in one status. */
    interface StatusCount {
        String getModelCode();

        CabinetStatus getStatus();

        long getUnits();
    }
}
