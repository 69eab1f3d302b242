package org.docksweep.service.cabinets;

import java.util.List;
import org.springframework.data.jpa.repository.JpaRepository;

interface AssetKeyRows extends JpaRepository<AssetKeyRow, String> {
    List<AssetKeyRow> findByTagOrderByKeyValue(String tag);

    List<AssetKeyRow> findByTagIsNotNullOrderByKeyValue();
}
