package org.docksweep.service.kiosks;

import jakarta.annotation.security.RolesAllowed;
import java.time.Instant;
import java.util.function.Function;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.KioskChanges;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.service.store.Transactions;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
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

    /** With {@code If-None-Match} of the snapshot before: 304 when nothing changed. */
    @GetMapping(ApiPaths.KIOSK_SNAPSHOT)
    ResponseEntity<KioskSnapshot> snapshot(WebRequest request) {
        return unlessKnown(request, now -> snapshots.snapshot());
    }

    /**
     * Only what changed since a copy, with its entity tag as {@code If-None-Match}: 304 when nothing changed. Changes may say again
     * what the copy says already.
     */
    @GetMapping(ApiPaths.KIOSK_CHANGES)
    ResponseEntity<KioskChanges> changes(@RequestParam Instant since, WebRequest request) {
        Fingerprint known = Fingerprint.of(request.getHeader(HttpHeaders.IF_NONE_MATCH));
        return unlessKnown(request, now -> snapshots.changes(since, known, now));
    }

    /** The fingerprint is taken first, so that a write in between makes the next question see a change, never miss one. */
    private <T> ResponseEntity<T> unlessKnown(WebRequest request, Function<Fingerprint, T> read) {
        Fingerprint now = transactions.read(snapshots::fingerprint);
        if (request.checkNotModified(now.etag())) {
            return ResponseEntity.status(HttpStatus.NOT_MODIFIED)
                    .eTag(now.etag())
                    .build();
        }
        return ResponseEntity.ok()
                .eTag(now.etag())
                .cacheControl(CacheControl.noCache().cachePrivate())
                .body(transactions.read(() -> read.apply(now)));
    }
}
