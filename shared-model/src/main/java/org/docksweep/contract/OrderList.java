package org.docksweep.contract;

import java.time.Instant;
import java.util.List;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.PartSource;

/**
 * What to order.
 *
 * @param siteName the house
 * @param asOf when this was true
 * @param rows parts to order, those that jobs wait for first
 */
public record OrderList(String siteName, Instant asOf, List<Row> rows) {

    /**
     * A part to order.
     *
     * @param partNumber part
     * @param name its name
     * @param source original or aftermarket
     * @param inStock pieces in stock
     * @param reorderLevel its reorder level
     * @param quantity pieces to order: so many that after serving waiting jobs the stock is above the level, at least
     *     the part's reorder quantity
     * @param unitCostCents cost of one, or null
     * @param waitingJobs jobs that wait for it
     */
    public record Row(
            String partNumber,
            String name,
            PartSource source,
            int inStock,
            int reorderLevel,
            int quantity,
            Integer unitCostCents,
            List<JobCode> waitingJobs) {}
}
