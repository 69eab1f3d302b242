package org.docksweep.service.parts;

import jakarta.persistence.LockModeType;
import java.util.List;
import java.util.Optional;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Lock;
import org.springframework.data.jpa.repository.Query;

interface PartRows extends JpaRepository<PartRow, String> {
    List<PartRow> findAllByOrderByNumber();

    @Lock(LockModeType.PESSIMISTIC_WRITE)
    @Query("select p from PartRow p where p.number = :number")
    Optional<PartRow> findLocked(String number);
}
