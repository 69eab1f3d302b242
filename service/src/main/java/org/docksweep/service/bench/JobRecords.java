package org.docksweep.service.bench;

import java.util.List;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface JobRecords extends JpaRepository<JobRecord, UUID> {
    @Query("select r from JobRecord r where r.jobCode = :job order by r.sequenceNumber")
    List<JobRecord> of(String job);
}
