package org.docksweep.service.parts;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface MoveRows extends JpaRepository<MoveRow, UUID> {
    @Query("select m from MoveRow m where m.partNumber = :part order by m.storedAt desc, m.id desc")
    List<MoveRow> newest(String part, Limit limit);

    @Query("select m from MoveRow m where m.partNumber = :part"
            + " and (m.storedAt < :at or (m.storedAt = :at and m.id < :id)) order by m.storedAt desc, m.id desc")
    List<MoveRow> newestAfter(String part, Instant at, UUID id, Limit limit);
}
