package org.docksweep.service.measurements;

import java.util.List;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface MeasurementRows extends JpaRepository<Measurement, UUID> {
    List<Measurement> findByCheckInIdOrderByLineNumber(UUID checkInId);
}
