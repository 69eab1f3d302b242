package org.docksweep.service.commissionings;

import java.util.List;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface BaselineEnds extends JpaRepository<BaselineEnd, BaselineEnd.Key> {
    @Query("select e from BaselineEnd e where e.key.tag = :tag")
    List<BaselineEnd> of(String tag);
}
