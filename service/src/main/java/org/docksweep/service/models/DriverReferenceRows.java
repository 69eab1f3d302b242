package org.docksweep.service.models;

import java.util.List;
import java.util.Optional;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface DriverReferenceRows extends JpaRepository<DriverReferenceRow, DriverReferenceRow.Key> {
    String NEWEST = "select r from DriverReferenceRow r where r.key.revision = (select max(n.key.revision)"
            + " from DriverReferenceRow n where n.key.driverModelCode = r.key.driverModelCode)";

    @Query(NEWEST + " order by r.key.driverModelCode")
    List<DriverReferenceRow> newest();

    @Query(NEWEST + " and r.key.driverModelCode = :model")
    Optional<DriverReferenceRow> newest(String model);
}
