package org.docksweep.service.learning;

import java.util.List;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface DecisionRows extends JpaRepository<DecisionRow, UUID> {
    List<DecisionRow> findAllByOrderByDecidedAtDescIdDesc();
}
