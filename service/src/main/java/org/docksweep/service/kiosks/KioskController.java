package org.docksweep.service.kiosks;

import jakarta.annotation.security.RolesAllowed;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.service.store.Transactions;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.context.request.WebRequest;

@RestController
@RolesAllowed("DOCK")
class KioskController {
    private final Snapshots snapshots;
    private final Transactions transactions;

    KioskController(Snapshots snapshots, Transactions transactions) {
        this.snapshots = snapshots;
        this.transactions = transactions;
    }

    /**
     * With {@code If-None-Match} of the snapshot before: 304 when nothing changed. The fingerprint is taken first, so
     * that a write in between makes the next question see a change, never miss one.
     */
    @GetMapping(ApiPaths.KIOSK_SNAPSHOT)
    ResponseEntity<KioskSnapshot> snapshot(WebRequest request) {
        String etag = "W/\"" + transactions.read(snapshots::fingerprint) + "\"";
        if (request.checkNotModified(etag)) {
            return ResponseEntity.status(HttpStatus.NOT_MODIFIED).eTag(etag).build();
        }
        return ResponseEntity.ok()
                .eTag(etag)
                .cacheControl(CacheControl.noCache().cachePrivate())
                .body(transactions.read(snapshots::snapshot));
    }
}
