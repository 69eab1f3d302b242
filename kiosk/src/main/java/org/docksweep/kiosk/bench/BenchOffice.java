package org.docksweep.kiosk.bench;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.BenchActionBody;
import org.docksweep.contract.BenchActionBody.Verb;
import org.docksweep.contract.BenchJobBody;
import org.docksweep.contract.BenchJobFile;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.FitAnswer;
import org.docksweep.contract.OrderedId;
import org.docksweep.contract.PartStock;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.DriverBenchData;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.ProcedureCard;
import org.docksweep.gate.PointReference;
import org.docksweep.kiosk.service.ServiceClient;
import org.docksweep.kiosk.service.ServiceProblem;
import org.docksweep.kiosk.service.ServiceUnreachable;

/** What the bench asks of the service. Blocking. */
final class BenchOffice {
    private final ServiceClient client;

    BenchOffice(ServiceClient client) {
        this.client = client;
    }

    List<BenchJobBody> queue() throws ServiceProblem, ServiceUnreachable {
        return client.all(ApiPaths.BENCH_JOBS, BenchJobBody.class);
    }

    BenchJobFile file(JobCode code) throws ServiceProblem, ServiceUnreachable {
        return client.get(job(code) + ApiPaths.FILE, BenchJobFile.class);
    }

    CheckInBody checkIn(UUID id) throws ServiceProblem, ServiceUnreachable {
        return client.get(ApiPaths.CHECK_INS + "/" + id, CheckInBody.class);
    }

    ProcedureCard card(BenchJobFile.Card suggested) throws ServiceProblem, ServiceUnreachable {
        return client.get(cardPath(suggested), ProcedureCard.class);
    }

    byte[] printedCard(BenchJobFile.Card suggested, JobCode code) throws ServiceProblem, ServiceUnreachable {
        return client.pdf(cardPath(suggested) + "?job=" + code);
    }

    private static String cardPath(BenchJobFile.Card suggested) {
        String generic = ApiPaths.PROCEDURES + "/" + suggested.purpose();
        return suggested.driverModelCode() == null ? generic : generic + "/" + plain(suggested.driverModelCode());
    }

    /** The part with a number; empty when the catalogue has none. */
    Optional<PartStock> part(String number) throws ServiceProblem, ServiceUnreachable {
        try {
            return Optional.of(client.get(ApiPaths.PARTS + "/" + plain(number), PartStock.class));
        } catch (ServiceProblem problem) {
            if (problem.status() == 404 || problem.status() == 400) {
                return Optional.empty();
            }
            throw problem;
        }
    }

    FitAnswer fit(String number, AssetTag tag, String positionCode, String elementId)
            throws ServiceProblem, ServiceUnreachable {
        return client.get(
                ApiPaths.PARTS + "/" + plain(number) + ApiPaths.FIT + "?tag=" + tag
                        + (positionCode == null ? "" : "&position=" + plain(positionCode))
                        + (elementId == null ? "" : "&element=" + plain(elementId)),
                FitAnswer.class);
    }

    /** The archive of a recording. */
    byte[] recording(String sha256) throws ServiceProblem, ServiceUnreachable {
        return client.bytes(ApiPaths.RECORDINGS + "/" + sha256, "application/zip");
    }

    List<DriverBenchData> benchData() throws ServiceProblem, ServiceUnreachable {
        return List.of(client.get(ApiPaths.DRIVER_BENCH_DATA, DriverBenchData[].class));
    }

    List<PointReference> driverReferences() throws ServiceProblem, ServiceUnreachable {
        return List.of(client.get(ApiPaths.DRIVER_REFERENCES, PointReference[].class));
    }

    /** Sends what a person does with a job, as decided on the state of it that is shown. */
    void act(OpenJob job, Author author, Verb verb, Words words) throws ServiceProblem, ServiceUnreachable {
        UUID id = OrderedId.next();
        add(
                job.code(),
                ApiPaths.ACTIONS,
                id,
                new BenchActionBody(
                        id,
                        verb,
                        job.file().job().revision(),
                        author.at(),
                        author.by(),
                        author.bench(),
                        words.partNumber(),
                        words.text(),
                        words.labourMinutes()));
    }

    /**
     * What goes with a verb; null what does not.
     *
     * @param partNumber part it waits for
     * @param text why
     * @param labourMinutes labour
     */
    record Words(String partNumber, String text, Integer labourMinutes) {
        static final Words NONE = new Words(null, null, null);
    }

    /** Adds a record to a job. */
    void add(JobCode code, String kind, UUID id, Object body) throws ServiceProblem, ServiceUnreachable {
        client.put(job(code) + kind + "/" + id, body);
    }

    private static String job(JobCode code) {
        return ApiPaths.BENCH_JOBS + "/" + code;
    }

    private static String plain(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
    }
}
