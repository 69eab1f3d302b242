package org.docksweep.service.people;

import java.time.Instant;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Modifying;
import org.springframework.data.jpa.repository.Query;
import org.springframework.transaction.annotation.Transactional;

interface SignOnRows extends JpaRepository<SignOnRow, String> {
    /** In a transaction of its own: who asks whose token it is has none. */
    @Transactional
    @Modifying
    @Query("update SignOnRow s set s.lastUsedAt = :at where s.sha256 = :sha256 and s.lastUsedAt < :at")
    void used(String sha256, Instant at);

    @Modifying
    @Query("update SignOnRow s set s.endedAt = :at where s.sha256 = :sha256 and s.endedAt is null")
    int end(String sha256, Instant at);

    @Modifying
    @Query("update SignOnRow s set s.endedAt = :at where s.personId = :personId and s.endedAt is null")
    void endOfPerson(UUID personId, Instant at);

    @Modifying
    @Query("update SignOnRow s set s.endedAt = :at where s.kiosk = :kiosk and s.endedAt is null")
    void endAtKiosk(String kiosk, Instant at);
}
