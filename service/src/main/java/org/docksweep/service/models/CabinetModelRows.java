package org.docksweep.service.models;

import java.util.Set;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface CabinetModelRows extends JpaRepository<CabinetModelRow, String> {
    @Query("select m.code from CabinetModelRow m")
    Set<String> codes();
}
