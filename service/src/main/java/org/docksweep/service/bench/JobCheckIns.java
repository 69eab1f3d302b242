package org.docksweep.service.bench;

import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface JobCheckIns extends JpaRepository<JobCheckIn, UUID> {
    @Query("select c from JobCheckIn c where c.jobCode in :jobs order by c.finishedAt, c.checkInId")
    List<JobCheckIn> of(Collection<String> jobs);
}
