package org.docksweep.service.cabinets;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface Installations extends JpaRepository<Installation, UUID> {
    @Query("select i from Installation i where i.openMarker = true and i.tag in :tags order by i.tag, i.positionCode")
    List<Installation> openIn(Collection<String> tags);

    @Query("select i from Installation i where i.openMarker = true order by i.tag, i.positionCode")
    List<Installation> open();

    @Query("select i from Installation i where i.openMarker = true and i.driverModelCode = :model"
            + " and i.driverSerial = :serial")
    Optional<Installation> openOf(String model, String serial);
}
