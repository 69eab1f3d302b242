package org.docksweep.service.security;

import jakarta.annotation.security.RolesAllowed;
import jakarta.servlet.http.HttpServletRequest;
import java.security.Principal;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.KioskToken;
import org.docksweep.contract.Page;
import org.docksweep.service.store.Transactions;
import org.docksweep.service.web.Paging;
import org.springframework.http.HttpStatus;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RolesAllowed("MANAGER")
class TokensController {
    private final Tokens tokens;
    private final Transactions transactions;

    TokensController(Tokens tokens, Transactions transactions) {
        this.tokens = tokens;
        this.transactions = transactions;
    }

    @GetMapping(ApiPaths.KIOSK_TOKENS)
    Page<KioskToken.Issued> page(
            @RequestParam(defaultValue = "") String after,
            @RequestParam(defaultValue = Paging.DEFAULT_LIMIT) int limit) {
        return tokens.page(after, limit);
    }

    @PostMapping(ApiPaths.KIOSK_TOKENS + "/{name}" + ApiPaths.ROTATE)
    @ResponseStatus(HttpStatus.CREATED)
    KioskToken rotate(@PathVariable String name, Principal principal) {
        return transactions.write(() -> tokens.rotate(name, principal.getName()));
    }

    @PostMapping(ApiPaths.KIOSK_TOKENS)
    @RolesAllowed({"MANAGER", "SETUP"})
    @ResponseStatus(HttpStatus.CREATED)
    KioskToken issue(@RequestBody KioskToken.Order order, Principal principal, HttpServletRequest request) {
        boolean setup = request.isUserInRole("SETUP");
        return transactions.write(() -> tokens.issue(order, principal.getName(), setup));
    }

    @DeleteMapping(ApiPaths.KIOSK_TOKENS + "/{name}")
    @ResponseStatus(HttpStatus.NO_CONTENT)
    void revoke(@PathVariable String name) {
        transactions.write(() -> {
            tokens.revoke(name);
            return name;
        });
    }
}
