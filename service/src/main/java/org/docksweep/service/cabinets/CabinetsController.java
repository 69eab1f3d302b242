package org.docksweep.service.cabinets;

import jakarta.annotation.security.RolesAllowed;
import jakarta.servlet.http.HttpServletRequest;
import java.security.Principal;
import java.util.List;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.contract.ImportReceipt;
import org.docksweep.contract.Page;
import org.docksweep.contract.SafetyTest;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.service.store.Transactions;
import org.docksweep.service.web.Paging;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RolesAllowed("DOCK")
class CabinetsController {
    private final Register register;
    private final History history;
    private final CabinetImport cabinetImport;
    private final Transactions transactions;

    CabinetsController(Register register, History history, CabinetImport cabinetImport, Transactions transactions) {
        this.register = register;
        this.history = history;
        this.cabinetImport = cabinetImport;
        this.transactions = transactions;
    }

    @GetMapping(ApiPaths.CABINETS)
    Page<CabinetBody> page(
            @RequestParam(required = false) CabinetStatus status,
            @RequestParam(defaultValue = "") String after,
            @RequestParam(defaultValue = Paging.DEFAULT_LIMIT) int limit) {
        return register.page(status, after, limit);
    }

    @GetMapping(ApiPaths.CABINETS + "/{tag}")
    CabinetBody find(@PathVariable AssetTag tag) {
        return register.find(tag);
    }

    @PutMapping(ApiPaths.CABINETS + "/{tag}")
    ResponseEntity<CabinetBody> put(
            @PathVariable AssetTag tag,
            @RequestBody CabinetBody body,
            Principal principal,
            HttpServletRequest request) {
        boolean mayChange = request.isUserInRole("MANAGER");
        return transactions
                .write(() -> register.put(tag, body, principal.getName(), mayChange))
                .response();
    }

    @RolesAllowed("BENCH")
    @PutMapping(ApiPaths.CABINETS + "/{tag}" + ApiPaths.SAFETY_TEST)
    CabinetBody safetyTest(@PathVariable AssetTag tag, @RequestBody SafetyTest body, Principal principal) {
        return transactions.write(() -> register.safetyTest(tag, body, principal.getName()));
    }

    @RolesAllowed("MANAGER")
    @PostMapping(path = ApiPaths.CABINETS_IMPORT, consumes = "text/csv")
    ImportReceipt importCsv(
            @RequestBody(required = false) byte[] file,
            @RequestHeader("Content-Type") String contentType,
            Principal principal) {
        return transactions.write(() -> cabinetImport.run(file, contentType, principal.getName()));
    }

    @GetMapping(ApiPaths.CABINETS + "/{tag}" + ApiPaths.HISTORY)
    Page<HistoryEvent> history(
            @PathVariable AssetTag tag,
            @RequestParam(defaultValue = "") String after,
            @RequestParam(defaultValue = Paging.DEFAULT_LIMIT) int limit) {
        return history.page(tag, after, limit);
    }

    @RolesAllowed("MANAGER")
    @PostMapping(ApiPaths.CABINETS + "/{tag}" + ApiPaths.HISTORY)
    ImportReceipt append(@PathVariable AssetTag tag, @RequestBody List<HistoryEvent> past) {
        return transactions.write(() -> history.append(tag, past));
    }
}
