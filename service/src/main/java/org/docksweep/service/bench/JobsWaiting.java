package org.docksweep.service.bench;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.docksweep.fleet.JobCode;
import org.docksweep.service.parts.WaitingJobs;
import org.springframework.stereotype.Component;

/** Tells the stock which jobs wait for which parts. */
@Component
class JobsWaiting implements WaitingJobs {
    private final BenchJobs jobs;

    JobsWaiting(BenchJobs jobs) {
        this.jobs = jobs;
    }

    @Override
    public Map<String, List<JobCode>> byPart() {
        return jobs.open().stream()
                .filter(j -> j.waitsForPart() != null)
                .collect(Collectors.groupingBy(
                        BenchJob::waitsForPart, Collectors.mapping(BenchJob::jobCode, Collectors.toList())));
    }
}
