package org.docksweep.service.parts;

import java.util.List;
import java.util.Map;
import org.docksweep.fleet.JobCode;

/** Jobs that wait for parts, as the bench knows them. */
public interface WaitingJobs {
    /**
     * Open jobs by the part they wait for.
     *
     * @return codes by part number, oldest job first
     */
    Map<String, List<JobCode>> byPart();
}
