package org.docksweep.service.measurements;

import jakarta.annotation.security.RolesAllowed;
import java.io.InputStream;
import org.docksweep.contract.ApiPaths;
import org.docksweep.service.web.Refusal;
import org.springframework.core.io.FileSystemResource;
import org.springframework.core.io.Resource;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RolesAllowed("DOCK")
class RecordingsController {
    private static final String ZIP = "application/zip";

    private final RecordingStore store;

    RecordingsController(RecordingStore store) {
        this.store = store;
    }

    @PutMapping(path = ApiPaths.RECORDINGS + "/{sha256}", consumes = ZIP)
    ResponseEntity<Void> put(@PathVariable String sha256, InputStream body) {
        return ResponseEntity.status(store.put(sha256, body) ? HttpStatus.CREATED : HttpStatus.OK)
                .build();
    }

    @GetMapping(path = ApiPaths.RECORDINGS + "/{sha256}")
    ResponseEntity<Resource> find(@PathVariable String sha256) {
        return store.find(sha256)
                .map(file -> ResponseEntity.ok()
                        .contentType(MediaType.parseMediaType(ZIP))
                        .<Resource>body(new FileSystemResource(file)))
                .orElseThrow(
                        () -> Refusal.notFound(
                                "sha256",
                                "there is no recording " + sha256,
                                "Its kiosk may not have sent it yet, or it was removed when its time was over (docksweep.retention.recordings)."));
    }
}
