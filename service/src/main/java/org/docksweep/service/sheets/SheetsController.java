package org.docksweep.service.sheets;

import jakarta.annotation.security.RolesAllowed;
import java.security.Principal;
import java.time.Clock;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.UUID;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.FleetStatus;
import org.docksweep.contract.OrderList;
import org.docksweep.contract.ReturnReport;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.ProcedurePurpose;
import org.docksweep.paper.EvidenceSheet;
import org.docksweep.paper.FleetStatusSheet;
import org.docksweep.paper.OrderSheet;
import org.docksweep.paper.PaperContext;
import org.docksweep.paper.ProcedureSheet;
import org.docksweep.paper.ReturnSheet;
import org.docksweep.service.bench.Bench;
import org.docksweep.service.histories.Evidence;
import org.docksweep.service.parts.Orders;
import org.docksweep.service.procedures.Procedures;
import org.docksweep.service.site.Site;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** Sheets as JSON, or as PDF for {@code Accept: application/pdf}, in English or, when preferred, German. */
@RestController
@RolesAllowed("DOCK")
class SheetsController {
    private static final String CSV = "text/csv;charset=UTF-8";
    private static final List<Locale> LANGUAGES = List.of(Locale.ENGLISH, Locale.GERMAN);

    private final Sheets sheets;
    private final Procedures procedures;
    private final Bench bench;
    private final Orders orders;
    private final Evidence evidence;
    private final Site site;
    private final Clock clock;

    SheetsController(
            Sheets sheets,
            Procedures procedures,
            Bench bench,
            Orders orders,
            Evidence evidence,
            Site site,
            Clock clock) {
        this.sheets = sheets;
        this.procedures = procedures;
        this.bench = bench;
        this.orders = orders;
        this.evidence = evidence;
        this.site = site;
        this.clock = clock;
    }

    @GetMapping(path = ApiPaths.FLEET_STATUS, produces = MediaType.APPLICATION_JSON_VALUE)
    FleetStatus fleetStatus(@RequestParam(required = false) List<String> model) {
        return sheets.fleetStatus(model);
    }

    @GetMapping(path = ApiPaths.FLEET_STATUS, produces = CSV)
    String fleetStatusCsv(
            @RequestParam(required = false) List<String> model,
            @RequestParam(defaultValue = "MODELS") FleetStatusSheet.Table part) {
        return FleetStatusCsv.of(sheets.fleetStatus(model), part);
    }

    @GetMapping(path = ApiPaths.FLEET_STATUS, produces = MediaType.APPLICATION_PDF_VALUE)
    byte[] fleetStatusSheet(
            @RequestParam(required = false) List<String> model,
            @RequestParam(required = false) List<FleetStatusSheet.Table> part,
            @RequestHeader(name = HttpHeaders.ACCEPT_LANGUAGE, defaultValue = "en") String languages,
            Principal principal) {
        return FleetStatusSheet.render(
                sheets.fleetStatus(model),
                part == null || part.isEmpty() ? EnumSet.allOf(FleetStatusSheet.Table.class) : EnumSet.copyOf(part),
                context(languages, principal));
    }

    @GetMapping(path = ApiPaths.RETURN_LISTS + "/{id}" + ApiPaths.REPORT, produces = MediaType.APPLICATION_JSON_VALUE)
    ReturnReport returnReport(@PathVariable UUID id, @RequestParam(required = false) List<String> model) {
        return sheets.returns(id, model);
    }

    @GetMapping(path = ApiPaths.RETURN_LISTS + "/{id}" + ApiPaths.REPORT, produces = CSV)
    String returnCsv(@PathVariable UUID id, @RequestParam(required = false) List<String> model) {
        return ReportCsv.returns(sheets.returns(id, model));
    }

    @GetMapping(path = ApiPaths.RETURN_LISTS + "/{id}" + ApiPaths.REPORT, produces = MediaType.APPLICATION_PDF_VALUE)
    byte[] returnSheet(
            @PathVariable UUID id,
            @RequestParam(required = false) List<String> model,
            @RequestHeader(name = HttpHeaders.ACCEPT_LANGUAGE, defaultValue = "en") String languages,
            Principal principal) {
        return ReturnSheet.render(sheets.returns(id, model), context(languages, principal));
    }

    @GetMapping(path = ApiPaths.PROCEDURES + "/{purpose}", produces = MediaType.APPLICATION_PDF_VALUE)
    byte[] genericCard(
            @PathVariable ProcedurePurpose purpose,
            @RequestParam(required = false) JobCode job,
            @RequestHeader(name = HttpHeaders.ACCEPT_LANGUAGE, defaultValue = "en") String languages,
            Principal principal) {
        return card(purpose, null, job, context(languages, principal));
    }

    @GetMapping(path = ApiPaths.PROCEDURES + "/{purpose}/{driverModel}", produces = MediaType.APPLICATION_PDF_VALUE)
    byte[] driverCard(
            @PathVariable ProcedurePurpose purpose,
            @PathVariable String driverModel,
            @RequestParam(required = false) JobCode job,
            @RequestHeader(name = HttpHeaders.ACCEPT_LANGUAGE, defaultValue = "en") String languages,
            Principal principal) {
        return card(purpose, driverModel, job, context(languages, principal));
    }

    private byte[] card(ProcedurePurpose purpose, String driverModel, JobCode job, PaperContext context) {
        return ProcedureSheet.render(
                procedures.card(purpose, driverModel), job == null ? null : bench.find(job), context);
    }

    @GetMapping(path = ApiPaths.PART_ORDERS, produces = MediaType.APPLICATION_JSON_VALUE)
    OrderList orders(@RequestParam(required = false) List<String> model) {
        return orders.list(model);
    }

    @GetMapping(path = ApiPaths.PART_ORDERS, produces = CSV)
    String orderCsv(@RequestParam(required = false) List<String> model) {
        return ReportCsv.orders(orders.list(model));
    }

    @GetMapping(path = ApiPaths.PART_ORDERS, produces = MediaType.APPLICATION_PDF_VALUE)
    byte[] orderList(
            @RequestParam(required = false) List<String> model,
            @RequestHeader(name = HttpHeaders.ACCEPT_LANGUAGE, defaultValue = "en") String languages,
            Principal principal) {
        return OrderSheet.render(orders.list(model), context(languages, principal));
    }

    @GetMapping(path = ApiPaths.BENCH_JOBS + "/{code}" + ApiPaths.EVIDENCE, produces = MediaType.APPLICATION_PDF_VALUE)
    byte[] evidenceSheet(
            @PathVariable JobCode code,
            @RequestHeader(name = HttpHeaders.ACCEPT_LANGUAGE, defaultValue = "en") String languages,
            Principal principal) {
        return EvidenceSheet.render(evidence.of(code), context(languages, principal));
    }

    private PaperContext context(String languages, Principal principal) {
        return new PaperContext(
                site.siteName(),
                site.zone(),
                language(languages),
                principal.getName(),
                clock.instant(),
                Objects.requireNonNullElse(getClass().getPackage().getImplementationVersion(), "development"));
    }

    private static Locale language(String languages) {
        try {
            Locale wanted = Locale.lookup(Locale.LanguageRange.parse(languages), LANGUAGES);
            return wanted == null ? Locale.ENGLISH : wanted;
        } catch (IllegalArgumentException e) {
            // A header nobody can read is no reason to refuse a sheet.
            return Locale.ENGLISH;
        }
    }
}
