package org.docksweep.service.reliability;

import java.util.List;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface PastLifeRows extends JpaRepository<PastLifeRow, UUID> {
    List<PastLifeRow> findAllByOrderById();
}
