package org.docksweep.service.returns;

import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.docksweep.contract.ReturnReport;
import org.docksweep.fleet.AssetTag;

/** What came back, as the check-ins know it. */
public interface Arrivals {
    /**
     * Newest check-in of every cabinet that was checked in against a list, whether it is on the list or not.
     *
     * @param returnListId the list
     * @return one row per cabinet, oldest first
     */
    List<ReturnReport.Row> against(UUID returnListId);

    /**
     * Newest check-in of some cabinets that reached the service within a time, whatever list they were checked in
     * against: a cabinet on two lists, or scanned without a list, came back all the same.
     *
     * @param tags cabinets
     * @param from earliest time of receipt
     * @param to latest time of receipt
     * @return one row per cabinet that came
     */
    List<ReturnReport.Row> of(Collection<AssetTag> tags, Instant from, Instant to);
}
