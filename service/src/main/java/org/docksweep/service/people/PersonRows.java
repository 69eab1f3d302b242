package org.docksweep.service.people;

import jakarta.persistence.LockModeType;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Lock;
import org.springframework.data.jpa.repository.Query;

interface PersonRows extends JpaRepository<PersonRow, UUID> {
    /** Locked, so that tries of one badge come one after the other and all of them are counted. */
    @Lock(LockModeType.PESSIMISTIC_WRITE)
    @Query("select p from PersonRow p where p.badge = :badge and p.openMarker = true")
    Optional<PersonRow> lockedByBadge(String badge);

    @Query("select p from PersonRow p where p.badge = :badge and p.openMarker = true")
    Optional<PersonRow> byBadge(String badge);

    @Query("select p from PersonRow p order by p.id")
    List<PersonRow> first(Limit limit);

    @Query("select p from PersonRow p where p.id > :after order by p.id")
    List<PersonRow> after(UUID after, Limit limit);
}
