package org.docksweep.service.commissionings;

import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface CommissioningRows extends JpaRepository<Commissioning, UUID> {}
