package org.docksweep.service.bench;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.docksweep.contract.BenchJobBody;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.Page;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverBenchData;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.Route;
import org.docksweep.fleet.Verdict;
import org.docksweep.service.dispatches.Availability;
import org.docksweep.service.dispatches.Dispatches;
import org.docksweep.service.models.Models;
import org.docksweep.service.procedures.Procedures;
import org.docksweep.service.site.Site;
import org.docksweep.service.store.Question;
import org.docksweep.service.web.Paging;
import org.docksweep.service.web.Refusal;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** The bench queue. */
@Service
@Transactional(readOnly = true)
public class Bench {
    private final BenchJobs jobs;
    private final PrintedCodes printedCodes;
    private final JobCheckIns checkIns;
    private final Dispatches dispatches;
    private final Models models;
    private final Procedures procedures;
    private final Site site;

    Bench(
            BenchJobs jobs,
            PrintedCodes printedCodes,
            JobCheckIns checkIns,
            Dispatches dispatches,
            Models models,
            Procedures procedures,
            Site site) {
        this.jobs = jobs;
        this.printedCodes = printedCodes;
        this.checkIns = checkIns;
        this.dispatches = dispatches;
        this.models = models;
        this.procedures = procedures;
        this.site = site;
    }

    /**
     * The job a check-in belongs to.
     *
     * @param code the job, or null when there is none
     * @param joined whether it was open before
     */
    public record Assignment(JobCode code, boolean joined) {}

    /**
     * The open job of a cabinet, to be asked together with other things by whoever holds the cabinet's lock.
     *
     * @param tag cabinet
     * @return the question, for {@link #assign}
     */
    public static Question<String> openJob(AssetTag tag) {
        return new Question<>(
                "select code from bench_job where tag = ? and open_marker = true",
                (row, number) -> row.getString(1),
                tag.value());
    }

    /**
     * Puts a check-in to the open job of its cabinet, whatever its route: a later pass does not close a job. Without an
     * open job, the route BENCH opens one under the code printed on the tag. The caller holds the cabinet's lock.
     *
     * @param checkIn the check-in
     * @param openJob what {@link #openJob} asked
     * @return its job
     * @throws Refusal if the printed code leads to another job already
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public Assignment assign(CheckInBody checkIn, Question<String> openJob) {
        Optional<BenchJob> open = openJob.answers().stream().findFirst().flatMap(jobs::findById);
        if (open.isEmpty() && checkIn.route() != Route.BENCH) {
            return new Assignment(null, false);
        }
        requireCodeFree(checkIn, open);
        BenchJob job = open.orElseGet(() -> jobs.saveAndFlush(new BenchJob(checkIn)));
        JobCode printed = checkIn.jobCode();
        if (printed != null && !printedCodes.existsById(printed.value())) {
            printedCodes.save(new PrintedCode(printed, job.jobCode()));
        }
        if (open.isPresent() && checkIn.verdict() != Verdict.PASS) {
            job.failedAgain();
        }
        checkIns.save(new JobCheckIn(checkIn.id(), job.jobCode(), checkIn.finishedAt()));
        return new Assignment(job.jobCode(), open.isPresent());
    }

    private void requireCodeFree(CheckInBody checkIn, Optional<BenchJob> open) {
        if (checkIn.jobCode() == null) {
            return;
        }
        printedCodes.findById(checkIn.jobCode().value()).ifPresent(used -> {
            if (open.isEmpty() || !open.get().getId().equals(used.jobCode())) {
                BenchJob other = jobs.findById(used.jobCode()).orElseThrow();
                throw Refusal.wrongState(
                        "jobCode",
                        "code " + checkIn.jobCode() + " was printed before, for a job of cabinet " + other.tag(),
                        "Print a new tag with another code; give every kiosk a number of its own.");
            }
        });
    }

    /**
     * Open jobs.
     *
     * @return by need date, those without one last; then by the day they were opened, oldest first; then by expected
     *     effort, least first
     */
    public List<BenchJobBody> queue() {
        return queue(dispatches.availability());
    }

    /**
     * Open jobs, for a caller that has the availability already.
     *
     * @param availability what of the bookings can be met
     * @return by need date, those without one last; then by the day they were opened, oldest first; then by expected
     *     effort, least first
     */
    public List<BenchJobBody> queue(Availability availability) {
        List<BenchJob> open = jobs.open();
        Map<String, List<UUID>> members = members(open);
        Map<String, Integer> places = new HashMap<>();
        Map<String, Efforts> efforts = efforts();
        List<BenchJobBody> bodies = new ArrayList<>();
        for (BenchJob job : open) {
            int place = places.merge(job.modelCode(), 1, Integer::sum) - 1;
            LocalDate needOn = availability.needOn(job.modelCode(), place);
            bodies.add(job.body(
                    needOn,
                    members.getOrDefault(job.getId(), List.of()),
                    efforts.get(job.modelCode()).minutes(job.suspects())));
        }
        bodies.sort(Comparator.comparing(this::key));
        return bodies;
    }

    private Map<String, Efforts> efforts() {
        ModelBook book = models.book();
        Map<String, DriverBenchData> data = procedures.byDriverModel();
        return book.cabinetModels().stream()
                .collect(Collectors.toMap(CabinetModel::code, model -> new Efforts(model, book, data)));
    }

    /**
     * How many jobs of each model are open.
     *
     * @return counts by cabinet model
     */
    public Map<String, Integer> openByModel() {
        Map<String, Integer> counts = new HashMap<>();
        jobs.open().forEach(j -> counts.merge(j.modelCode(), 1, Integer::sum));
        return counts;
    }

    private Map<String, List<UUID>> members(List<BenchJob> of) {
        return of.isEmpty()
                ? Map.of()
                : checkIns.of(of.stream().map(BenchJob::getId).toList()).stream()
                        .collect(Collectors.groupingBy(
                                JobCheckIn::jobCode, Collectors.mapping(JobCheckIn::getId, Collectors.toList())));
    }

    Page<BenchJobBody> page(AssetTag tag, Collection<String> wanted, String after, int limit) {
        Paging.checked(limit);
        if (wanted != null) {
            models.driversOf(wanted, "model");
        }
        List<BenchJobBody> queue = queue().stream()
                .filter(j -> tag == null || j.tag().equals(tag))
                .filter(j -> wanted == null || wanted.contains(j.modelCode()))
                .toList();
        int from = 0;
        while (!after.isEmpty() && from < queue.size() && key(queue.get(from)).compareTo(after) <= 0) {
            from++;
        }
        List<BenchJobBody> rest = queue.subList(from, Math.min(queue.size(), from + limit + 1));
        return Paging.page(rest, limit, job -> job, this::key);
    }

    /** Sorts as the queue does, so that a job that moved in between shifts no page. */
    private String key(BenchJobBody job) {
        String need = job.needOn() == null ? "9999-12-31" : job.needOn().toString();
        return String.format(
                Locale.ROOT,
                "%s~%s~%05d~%020d~%s",
                need,
                LocalDate.ofInstant(job.openedAt(), site.zone()),
                job.expectedEffortMinutes(),
                job.openedAt().getEpochSecond() * 1_000_000 + job.openedAt().getNano() / 1000,
                job.code());
    }

    /**
     * The job any printed code leads to, open or not.
     *
     * @param printed code
     * @return the job
     * @throws Refusal if there is none
     */
    public BenchJobBody find(JobCode printed) {
        BenchJob job = printedCodes
                .findById(printed.value())
                .flatMap(code -> jobs.findById(code.jobCode()))
                .orElseThrow(() -> Refusal.notFound(
                        "code",
                        "there is no bench job " + printed,
                        "Type the code as printed on the tag; a tag just printed arrives when its kiosk has sent it."));
        if (job.isOpen()) {
            return queue().stream()
                    .filter(body -> body.code().equals(job.jobCode()))
                    .findFirst()
                    .orElseThrow();
        }
        return job.body(
                null,
                members(List.of(job)).getOrDefault(job.getId(), List.of()),
                efforts().get(job.modelCode()).minutes(job.suspects()));
    }
}
