package org.docksweep.service.audit;

import java.util.List;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface AuditRows extends JpaRepository<AuditRow, Long> {
    @Query("select coalesce(max(r.number), 0) from AuditRow r")
    long newest();

    List<AuditRow> findByNumberGreaterThanOrderByNumber(long after, Limit limit);
}
