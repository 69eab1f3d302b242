package org.docksweep.service.parts;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.docksweep.contract.OrderList;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.Part;
import org.docksweep.service.site.Site;
import org.docksweep.service.web.Times;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Works out what to order. */
@Service
@Transactional(readOnly = true)
public class Orders {
    private final PartRows rows;
    private final WaitingJobs waiting;
    private final Site site;
    private final Times times;

    Orders(PartRows rows, WaitingJobs waiting, Site site, Times times) {
        this.rows = rows;
        this.waiting = waiting;
        this.site = site;
        this.times = times;
    }

    /**
     * Parts whose stock, after serving the jobs that wait for them, is at or below their reorder level.
     *
     * @return the list, parts that jobs wait for first
     */
    public OrderList list() {
        Map<String, List<JobCode>> jobs = waiting.byPart();
        List<OrderList.Row> list = new ArrayList<>();
        for (PartRow row : rows.findAllByOrderByNumber()) {
            Part part = row.part();
            List<JobCode> waitingJobs = jobs.getOrDefault(part.number(), List.of());
            int left = row.inStock() - waitingJobs.size();
            if (left <= part.reorderLevel()) {
                list.add(new OrderList.Row(
                        part.number(),
                        part.name(),
                        part.source(),
                        row.inStock(),
                        part.reorderLevel(),
                        Math.max(part.reorderQuantity(), part.reorderLevel() + 1 - left),
                        part.unitCostCents(),
                        waitingJobs));
            }
        }
        list.sort(Comparator.comparing((OrderList.Row r) -> r.waitingJobs().isEmpty())
                .thenComparing(OrderList.Row::partNumber));
        return new OrderList(site.siteName(), times.now(), list);
    }
}
