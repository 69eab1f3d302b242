package org.docksweep.service.checkins;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.docksweep.contract.ReturnReport;
import org.docksweep.fleet.AssetTag;
import org.docksweep.service.returns.Arrivals;
import org.springframework.stereotype.Component;

/** Tells the return lists what came back. */
@Component
class CheckInArrivals implements Arrivals {
    private final CheckInRows rows;

    CheckInArrivals(CheckInRows rows) {
        this.rows = rows;
    }

    @Override
    public List<ReturnReport.Row> against(UUID returnListId) {
        return newest(rows.findByReturnListIdOrderByFinishedAtAscIdAsc(returnListId));
    }

    @Override
    public List<ReturnReport.Row> of(Collection<AssetTag> tags, Instant from, Instant to) {
        return tags.isEmpty()
                ? List.of()
                : newest(rows.received(tags.stream().map(AssetTag::value).toList(), from, to));
    }

    private static List<ReturnReport.Row> newest(List<CheckIn> oldestFirst) {
        Map<AssetTag, ReturnReport.Row> newest = new LinkedHashMap<>();
        for (CheckIn checkIn : oldestFirst) {
            ReturnReport.Row row = checkIn.row();
            newest.remove(row.tag());
            newest.put(row.tag(), row);
        }
        return new ArrayList<>(newest.values());
    }
}
