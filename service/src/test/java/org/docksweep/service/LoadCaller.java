package org.docksweep.service;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.HttpURLConnection;
import java.net.URI;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.CheckInBody;

/**
 * Sends check-ins while a rate is measured. A kiosk's own work is done on the kiosk; here the caller shares the processors with the service, so
 * what it sends is written beforehand, and it speaks HTTP in the plainest way: one thread, one kept connection, no other threads to wake.
 */
final class LoadCaller {
    private static final int CREATED = 201;

    static {
        // One kept connection for each sender that may be at work; Java's own limit is five.
        System.setProperty("http.maxConnections", "64");
    }

    private final URI root;
    private final String token;

    LoadCaller(URI root, String token) {
        this.root = root;
        this.token = token;
    }

    /** A check-in as its bytes. */
    record Written(CheckInBody body, byte[] json) {
        static Written of(CheckInBody body) {
            return new Written(body, Api.MAPPER.writeValueAsBytes(body));
        }
    }

    /**
     * Sends a check-in and waits for the whole answer.
     *
     * @return HTTP status
     */
    int put(Written written) {
        try {
            HttpURLConnection connection = (HttpURLConnection)
                    URI.create(root + ApiPaths.CHECK_INS + "/" + written.body().id())
                            .toURL()
                            .openConnection();
            connection.setRequestMethod("PUT");
            connection.setRequestProperty("Content-Type", "application/json");
            connection.setRequestProperty("Authorization", "Bearer " + token);
            connection.setDoOutput(true);
            connection.setFixedLengthStreamingMode(written.json().length);
            try (OutputStream out = connection.getOutputStream()) {
                out.write(written.json());
            }
            int status = connection.getResponseCode();
            try (InputStream in = status < 400 ? connection.getInputStream() : connection.getErrorStream()) {
                in.transferTo(OutputStream.nullOutputStream());
            }
            return status;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Sends a check-in that has to be created. */
    void create(Written written) {
        int status = put(written);
        if (status != CREATED) {
            throw new IllegalStateException("check-in " + written.body().id() + ": status " + status);
        }
    }
}
