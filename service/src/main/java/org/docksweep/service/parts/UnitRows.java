package org.docksweep.service.parts;

import java.util.List;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface UnitRows extends JpaRepository<UnitRow, UnitRow.Key> {
    @Query("select u from UnitRow u where u.key.partNumber = :part order by u.since desc, u.key.serial")
    List<UnitRow> of(String part);

    @Query("select u from UnitRow u order by u.since desc, u.key.serial")
    List<UnitRow> newestFirst();

    @Query("select count(u) from UnitRow u where u.key.partNumber = :part"
            + " and u.state = org.docksweep.contract.PartUnit.State.IN_STOCK")
    long inStock(String part);

    @Query("select u from UnitRow u where u.diaphragmSerial = :serial and u.diaphragmPartNumber = :part")
    List<UnitRow> holding(String part, String serial);
}
