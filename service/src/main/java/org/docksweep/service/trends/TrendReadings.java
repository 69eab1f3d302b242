package org.docksweep.service.trends;

import jakarta.persistence.QueryHint;
import java.util.List;
import org.docksweep.gate.ReadingKind;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.jpa.repository.QueryHints;

interface TrendReadings extends JpaRepository<TrendReading, TrendReading.Key> {
    /** Not to be changed, so that a flush has not to look at each. */
    @QueryHints(@QueryHint(name = "org.hibernate.readOnly", value = "true"))
    @Query("select r from TrendReading r where r.modelCode = :model and r.testPointCode = :point and r.owner = :owner"
            + " and r.kind = :kind order by r.takenAt desc, r.key.measurementId, r.key.lineNumber")
    List<TrendReading> newest(String model, String point, String owner, ReadingKind kind, Limit limit);
}
