package org.docksweep.service.parts;

import jakarta.annotation.security.RolesAllowed;
import java.util.List;
import java.util.UUID;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.FitAnswer;
import org.docksweep.contract.Page;
import org.docksweep.contract.PartStock;
import org.docksweep.contract.StockMove;
import org.docksweep.contract.StockMoveBody;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Part;
import org.docksweep.service.store.Transactions;
import org.docksweep.service.web.Paging;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RolesAllowed("DOCK")
class PartsController {
    private final Catalogue catalogue;
    private final Stock stock;
    private final Transactions transactions;

    PartsController(Catalogue catalogue, Stock stock, Transactions transactions) {
        this.catalogue = catalogue;
        this.stock = stock;
        this.transactions = transactions;
    }

    @GetMapping(ApiPaths.PARTS)
    List<PartStock> all(@RequestParam(required = false) String fits) {
        return catalogue.all(fits);
    }

    @GetMapping(ApiPaths.PARTS + "/{number}")
    PartStock find(@PathVariable String number) {
        return catalogue.find(number);
    }

    @RolesAllowed("MANAGER")
    @PutMapping(ApiPaths.PARTS + "/{number}")
    ResponseEntity<Part> put(@PathVariable String number, @RequestBody Part part) {
        return transactions.write(() -> catalogue.put(number, part)).response();
    }

    @GetMapping(ApiPaths.PARTS + "/{number}" + ApiPaths.FIT)
    FitAnswer fit(
            @PathVariable String number,
            @RequestParam AssetTag tag,
            @RequestParam(required = false) String position,
            @RequestParam(required = false) String element) {
        return transactions.read(() -> catalogue.fit(catalogue.find(number).part(), tag, position, element));
    }

    @GetMapping(ApiPaths.PARTS + "/{number}" + ApiPaths.MOVES)
    Page<StockMove> moves(
            @PathVariable String number,
            @RequestParam(defaultValue = "") String after,
            @RequestParam(defaultValue = Paging.DEFAULT_LIMIT) int limit) {
        return catalogue.moves(number, after, limit);
    }

    @RolesAllowed("BENCH")
    @PutMapping(ApiPaths.STOCK_MOVES + "/{id}")
    ResponseEntity<PartStock> book(@PathVariable UUID id, @RequestBody StockMoveBody body) {
        return transactions.write(() -> stock.book(id, body)).response();
    }
}
