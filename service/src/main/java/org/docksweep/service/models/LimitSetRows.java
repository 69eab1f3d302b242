package org.docksweep.service.models;

import java.util.Optional;
import org.springframework.data.jpa.repository.JpaRepository;

interface LimitSetRows extends JpaRepository<LimitSetRow, Integer> {
    Optional<LimitSetRow> findFirstByOrderByVersionDesc();
}
