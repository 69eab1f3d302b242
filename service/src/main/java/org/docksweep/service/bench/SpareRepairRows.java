package org.docksweep.service.bench;

import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface SpareRepairRows extends JpaRepository<SpareRepairRow, UUID> {}
