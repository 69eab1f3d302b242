package org.docksweep.service.reliability;

import jakarta.annotation.security.RolesAllowed;
import java.security.Principal;
import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.ImportReceipt;
import org.docksweep.contract.PastPartLife;
import org.docksweep.contract.ReliabilityReport;
import org.docksweep.paper.PaperContext;
import org.docksweep.paper.ReliabilitySheet;
import org.docksweep.service.site.Site;
import org.docksweep.service.store.Transactions;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** The reliability report as JSON, CSV or PDF, and the door for past lives. */
@RestController
@RolesAllowed("DOCK")
class ReliabilityController {
    private static final List<Locale> LANGUAGES = List.of(Locale.ENGLISH, Locale.GERMAN);
    private static final String CSV = "text/csv";

    private final Reliability reliability;
    private final PastLives pastLives;
    private final Transactions transactions;
    private final Site site;
    private final Clock clock;

    ReliabilityController(
            Reliability reliability, PastLives pastLives, Transactions transactions, Site site, Clock clock) {
        this.reliability = reliability;
        this.pastLives = pastLives;
        this.transactions = transactions;
        this.site = site;
        this.clock = clock;
    }

    @GetMapping(path = ApiPaths.RELIABILITY, produces = MediaType.APPLICATION_JSON_VALUE)
    ReliabilityReport report(@RequestParam(required = false) String driverModel) {
        return reliability.report(driverModel);
    }

    @GetMapping(path = ApiPaths.RELIABILITY, produces = CSV)
    String csv(@RequestParam(required = false) String driverModel) {
        return ReliabilityCsv.of(reliability.report(driverModel));
    }

    @GetMapping(path = ApiPaths.RELIABILITY, produces = MediaType.APPLICATION_PDF_VALUE)
    byte[] sheet(
            @RequestParam(required = false) String driverModel,
            @RequestHeader(name = HttpHeaders.ACCEPT_LANGUAGE, defaultValue = "en") String languages,
            Principal principal) {
        PaperContext context = new PaperContext(
                site.siteName(),
                site.zone(),
                language(languages),
                principal.getName(),
                clock.instant(),
                Objects.requireNonNullElse(getClass().getPackage().getImplementationVersion(), "development"));
        return ReliabilitySheet.render(reliability.report(driverModel), context);
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

    @RolesAllowed("MANAGER")
    @PostMapping(ApiPaths.PAST_PART_LIVES)
    ImportReceipt append(@RequestBody List<PastPartLife> lives) {
        return transactions.write(() -> pastLives.append(lives));
    }
}
