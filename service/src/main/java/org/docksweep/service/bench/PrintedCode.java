package org.docksweep.service.bench;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import org.docksweep.fleet.JobCode;
import org.docksweep.service.store.Stored;

/** A code printed on a tag and the job it leads to. */
@Entity
@Table(name = "bench_job_code")
class PrintedCode extends Stored<String> {
    @Id
    private String printedCode;

    private String jobCode;

    protected PrintedCode() {}

    PrintedCode(JobCode printed, JobCode job) {
        this.printedCode = printed.value();
        this.jobCode = job.value();
    }

    String jobCode() {
        return jobCode;
    }

    @Override
    public String getId() {
        return printedCode;
    }
}
