package org.docksweep.service.bench;

import java.util.List;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface FindingRows extends JpaRepository<FindingRow, UUID> {
    @Query("select f from FindingRow f order by f.happenedAt, f.id")
    List<FindingRow> oldestFirst();
}
