package org.docksweep.service.returns;

import jakarta.annotation.security.RolesAllowed;
import java.security.Principal;
import java.util.UUID;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.ImportReceipt;
import org.docksweep.contract.Page;
import org.docksweep.contract.ReturnList;
import org.docksweep.contract.ReturnReport;
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
class ReturnsController {
    private final Returns returns;
    private final ReturnImport returnImport;
    private final Transactions transactions;

    ReturnsController(Returns returns, ReturnImport returnImport, Transactions transactions) {
        this.returns = returns;
        this.returnImport = returnImport;
        this.transactions = transactions;
    }

    @GetMapping(ApiPaths.RETURN_LISTS)
    Page<ReturnList> page(
            @RequestParam(required = false) UUID after, @RequestParam(defaultValue = Paging.DEFAULT_LIMIT) int limit) {
        return returns.page(after, limit);
    }

    @GetMapping(ApiPaths.RETURN_LISTS + "/{id}")
    ReturnList find(@PathVariable UUID id) {
        return returns.find(id);
    }

    @RolesAllowed("MANAGER")
    @PutMapping(ApiPaths.RETURN_LISTS + "/{id}")
    ResponseEntity<ReturnList> put(@PathVariable UUID id, @RequestBody ReturnList list, Principal principal) {
        return transactions
                .write(() -> returns.put(id, list, principal.getName()))
                .response();
    }

    @RolesAllowed("MANAGER")
    @PostMapping(path = ApiPaths.RETURN_LISTS_IMPORT, consumes = "text/csv")
    ImportReceipt importCsv(
            @RequestBody(required = false) byte[] file,
            @RequestHeader("Content-Type") String contentType,
            Principal principal) {
        return transactions.write(() -> returnImport.run(file, contentType, principal.getName()));
    }

    @PostMapping(ApiPaths.RETURN_LISTS + "/{id}" + ApiPaths.CLOSE)
    ReturnReport close(@PathVariable UUID id, Principal principal) {
        return transactions.write(() -> returns.close(id, principal.getName()));
    }
}
