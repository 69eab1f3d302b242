package org.docksweep.service.audit;

import java.util.List;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.JpaRepository;

interface AuditRows extends JpaRepository<AuditRow, Long> {
    List<AuditRow> findByNumberGreaterThanOrderByNumber(long after, Limit limit);
}
