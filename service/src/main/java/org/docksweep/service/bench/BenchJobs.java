package org.docksweep.service.bench;

import java.util.List;
import java.util.Optional;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface BenchJobs extends JpaRepository<BenchJob, String> {
    @Query("select j.tag from BenchJob j where j.code = :code")
    Optional<String> tagOf(String code);

    @Query("select j from BenchJob j where j.tag = :tag order by j.openedAt desc, j.code")
    List<BenchJob> ofCabinet(String tag);

    @Query("select j from BenchJob j where j.openMarker = true order by j.openedAt, j.code")
    List<BenchJob> open();
}
