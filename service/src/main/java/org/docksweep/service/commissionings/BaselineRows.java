package org.docksweep.service.commissionings;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface BaselineRows extends JpaRepository<BaselineRow, BaselineRow.Key> {
    @Query(
            nativeQuery = true,
            value = "select commissioning_id, test_point_code, tag, taken_at, body_json from (select b.*,"
                    + " row_number() over (partition by tag, test_point_code order by taken_at desc,"
                    + " commissioning_id desc) as place from baseline b) ranked where place = 1"
                    + " and not exists (select 1 from baseline_end e where e.tag = ranked.tag"
                    + " and e.test_point_code = ranked.test_point_code and e.ended_at >= ranked.taken_at)"
                    + " order by tag, test_point_code")
    List<BaselineRow> newest();

    @Query(
            nativeQuery = true,
            value = "select distinct tag from (select tag from baseline where changed_at > :since"
                    + " union all select tag from baseline_end where changed_at > :since) changed order by tag")
    List<String> changedAfter(Instant since);

    @Query("select b from BaselineRow b where b.tag = :tag order by b.takenAt desc")
    List<BaselineRow> of(String tag);

    @Query("select b from BaselineRow b where b.key.commissioningId = :id order by b.key.testPointCode")
    List<BaselineRow> of(UUID id);
}
