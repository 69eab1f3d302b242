package org.docksweep.service.cabinets;

import jakarta.annotation.security.RolesAllowed;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.AssetKeys;
import org.docksweep.fleet.AssetTag;
import org.docksweep.service.store.Transactions;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RolesAllowed("DOCK")
class LabelsController {
    private final Labels labels;
    private final Transactions transactions;

    LabelsController(Labels labels, Transactions transactions) {
        this.labels = labels;
        this.transactions = transactions;
    }

    @GetMapping(ApiPaths.CABINETS + "/{tag}" + ApiPaths.ASSET_KEYS)
    AssetKeys of(@PathVariable AssetTag tag) {
        return labels.of(tag);
    }

    @RolesAllowed("MANAGER")
    @PutMapping(ApiPaths.CABINETS + "/{tag}" + ApiPaths.ASSET_KEYS)
    AssetKeys put(@PathVariable AssetTag tag, @RequestBody AssetKeys keys) {
        return transactions.write(() -> labels.put(tag, keys));
    }
}
