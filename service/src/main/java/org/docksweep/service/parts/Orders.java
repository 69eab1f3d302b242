package org.docksweep.service.parts;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.docksweep.contract.OrderList;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.Part;
import org.docksweep.service.models.Models;
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
    private final Models models;
    private final Site site;
    private final Times times;

    Orders(PartRows rows, WaitingJobs waiting, Models models, Site site, Times times) {
        this.rows = rows;
        this.waiting = waiting;
        this.models = models;
        this.site = site;
        this.times = times;
    }

    /**
     * Parts whose stock, after serving the jobs that wait for them, is at or below their reorder level.
     *
     * @return the list, parts that jobs wait for first
     */
    public OrderList list() {
        return list(part -> true);
    }

    /**
     * The same of parts that fit into cabinets of some models.
     *
     * @param wanted codes of cabinet models, or null for all
     * @return the list
     * @throws org.docksweep.service.web.Refusal if there is no model of such a code
     */
    public OrderList list(Collection<String> wanted) {
        if (wanted == null || wanted.isEmpty()) {
            return list();
        }
        Set<String> drivers = models.driversOf(wanted, "model");
        return list(part -> part.fitsDriverModels().isEmpty()
                ? part.fitsCabinetModels().isEmpty()
                        || part.fitsCabinetModels().stream().anyMatch(wanted::contains)
                : part.fitsDriverModels().stream().anyMatch(drivers::contains));
    }

    private OrderList list(Predicate<Part> kept) {
        Map<String, List<JobCode>> jobs = waiting.byPart();
        List<OrderList.Row> list = new ArrayList<>();
        for (PartRow row : rows.findAllByOrderByNumber()) {
            Part part = row.part();
            List<JobCode> waitingJobs = jobs.getOrDefault(part.number(), List.of());
            int left = row.inStock() - waitingJobs.size();
            if (left <= part.reorderLevel() && kept.test(part)) {
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
