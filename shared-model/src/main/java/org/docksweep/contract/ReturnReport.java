package org.docksweep.contract;

import java.time.Instant;
import java.util.List;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Route;
import org.docksweep.fleet.Verdict;

/**
 * How a return list came back.
 *
 * @param list the list
 * @param asOf when this was true
 * @param back cabinets of the list that came back
 * @param missing cabinets of the list that did not
 * @param unexpected cabinets that came with this truck but are not on the list
 */
public record ReturnReport(
        ReturnList list, Instant asOf, List<Row> back, List<ReturnList.Line> missing, List<Row> unexpected) {

    /**
     * One cabinet that came back.
     *
     * @param tag asset tag
     * @param modelCode model
     * @param checkedInAt when
     * @param verdict verdict, or null when it was held without a sweep
     * @param route where it went
     * @param watch whether it got a watch mark
     * @param reason the deciding sentence
     * @param jobCode bench job, or null
     */
    public record Row(
            AssetTag tag,
            String modelCode,
            Instant checkedInAt,
            Verdict verdict,
            Route route,
            boolean watch,
            Reason reason,
            JobCode jobCode) {}
}
