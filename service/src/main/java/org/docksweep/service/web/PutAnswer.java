package org.docksweep.service.web;

import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;

/**
 * Answer to an idempotent PUT.
 *
 * @param created whether it is new
 * @param body what is stored now
 * @param <T> body type
 */
public record PutAnswer<T>(boolean created, T body) {
    /**
     * The HTTP response.
     *
     * @return 201 when new, 200 when it was there
     */
    public ResponseEntity<T> response() {
        return ResponseEntity.status(created ? HttpStatus.CREATED : HttpStatus.OK)
                .body(body);
    }
}
