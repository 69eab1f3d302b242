package org.docksweep.service.bench;

import java.util.List;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface UnitEventRows extends JpaRepository<UnitEventRow, UUID> {
    @Query("select e from UnitEventRow e where e.driverModelCode = :model and e.driverSerial = :serial"
            + " order by e.happenedAt desc, e.id")
    List<UnitEventRow> of(String model, String serial);
}
