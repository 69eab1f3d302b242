package org.docksweep.service.models;

import java.util.Set;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface DriverModelRows extends JpaRepository<DriverModelRow, String> {
    @Query("select m.code from DriverModelRow m")
    Set<String> codes();
}
