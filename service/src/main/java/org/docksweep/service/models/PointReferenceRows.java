package org.docksweep.service.models;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface PointReferenceRows extends JpaRepository<PointReferenceRow, PointReferenceRow.Key> {
    String NEWEST = "select r from PointReferenceRow r where r.key.revision = (select max(n.key.revision)"
            + " from PointReferenceRow n where n.key.cabinetModelCode = r.key.cabinetModelCode"
            + " and n.key.testPointCode = r.key.testPointCode)";

    @Query(NEWEST + " order by r.key.cabinetModelCode, r.key.testPointCode")
    List<PointReferenceRow> newest();

    @Query("select r from PointReferenceRow r where r.storedAt < :before order by r.storedAt, r.key.revision")
    List<PointReferenceRow> storedBefore(Instant before);

    @Query(NEWEST + " and r.key.cabinetModelCode = :model and r.key.testPointCode = :point")
    Optional<PointReferenceRow> newest(String model, String point);
}
