package org.docksweep.service.bench;

import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface ProofMeasurements extends JpaRepository<ProofMeasurement, UUID> {
    @Query("select m from ProofMeasurement m where m.proofId in :proofs order by m.proofId, m.lineNumber")
    List<ProofMeasurement> of(Collection<UUID> proofs);
}
