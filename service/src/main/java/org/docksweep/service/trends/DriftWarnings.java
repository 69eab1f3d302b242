package org.docksweep.service.trends;

import java.util.List;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface DriftWarnings extends JpaRepository<DriftWarning, UUID> {
    List<DriftWarning> findAllByOrderByTag();
}
