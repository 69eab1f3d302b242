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

    /** One cabinet: a query whose plan is made once, unlike one over a list. */
    @Query("select i from Installation i where i.openMarker = true and i.tag = :tag order by i.positionCode")
    List<Installation> openIn(String tag);

    @Query("select i from Installation i where i.openMarker = true order by i.tag, i.positionCode")
    List<Installation> open();

    @Query("select i from Installation i where i.openMarker = true and i.driverModelCode = :model"
            + " and i.driverSerial = :serial")
    Optional<Installation> openOf(String model, String serial);

    @Query("select i from Installation i where i.openMarker = true and i.tag = :tag and i.positionCode = :position")
    Optional<Installation> openAt(String tag, String position);

    @Query("select i from Installation i where i.diaphragmSerial = :serial and i.driverModelCode in :models"
            + " order by i.installedOn, i.id")
    List<Installation> withDiaphragm(Collection<String> models, String serial);

    @Query("select i from Installation i where i.tag = :tag order by i.installedOn desc, i.id")
    List<Installation> ofCabinet(String tag);

    @Query("select i from Installation i where i.driverModelCode = :model and i.driverSerial = :serial"
            + " order by i.installedOn desc, i.id")
    List<Installation> ofDriver(String model, String serial);

    @Query("select i from Installation i where i.driverModelCode = :model order by i.installedOn, i.id")
    List<Installation> ofModel(String model);

    @Query("select i from Installation i order by i.installedOn, i.id")
    List<Installation> all();
}
