package org.docksweep.kiosk.service;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.KioskChanges;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.contract.Page;
import org.docksweep.kiosk.spool.Wire;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JavaType;
import tools.jackson.databind.JsonNode;

/** Speaks to the service with the contract's records. Blocking; never call it from the event thread. */
public final class ServiceClient {
    private static final String JSON = "application/json";
    private static final Duration CONNECT_TIME = Duration.ofSeconds(3);
    private static final Duration ANSWER_TIME = Duration.ofSeconds(20);

    private final URI base;
    private final String token;
    private final Duration patience;
    private final LazyHttp http;

    /**
     * Makes a client.
     *
     * @param base address of the service, for example {@code http://127.0.0.1:8080}
     * @param token token of this kiosk
     */
    public ServiceClient(URI base, String token) {
        this(base, token, ANSWER_TIME);
    }

    /**
     * Makes a client.
     *
     * @param base address of the service
     * @param token token of this kiosk
     * @param answerTime how long to wait for an answer
     */
    public ServiceClient(URI base, String token, Duration answerTime) {
        this(base, token, answerTime, new LazyHttp());
    }

    private ServiceClient(URI base, String token, Duration patience, LazyHttp http) {
        this.base = base;
        this.token = token;
        this.patience = patience;
        this.http = http;
    }

    /** Made with the first request: that takes a while, and the window does not wait for it. */
    private static final class LazyHttp {
        private HttpClient made;

        synchronized HttpClient get() {
            if (made == null) {
                made = HttpClient.newBuilder()
                        .connectTimeout(CONNECT_TIME)
                        .version(HttpClient.Version.HTTP_1_1)
                        .build();
            }
            return made;
        }
    }

    /**
     * A copy of something that may not have changed.
     *
     * @param snapshot the copy
     * @param etag its entity tag, or null
     */
    public record Fresh(KioskSnapshot snapshot, String etag) {}

    /**
     * Reads the kiosk's copy of the fleet if it has changed.
     *
     * @param knownEtag entity tag of the copy at hand, or null
     * @return the new copy; empty when the one at hand is the newest
     * @throws ServiceProblem if the service refuses
     * @throws ServiceUnreachable if there is no answer
     */
    public Optional<Fresh> snapshotUnless(String knownEtag) throws ServiceProblem, ServiceUnreachable {
        HttpRequest.Builder request = request(ApiPaths.KIOSK_SNAPSHOT).GET();
        if (knownEtag != null) {
            request.header("If-None-Match", knownEtag);
        }
        HttpResponse<byte[]> response = send(request);
        if (response.statusCode() == 304) {
            return Optional.empty();
        }
        KioskSnapshot snapshot = read(response, Wire.json().constructType(KioskSnapshot.class));
        return Optional.of(
                new Fresh(snapshot, response.headers().firstValue("ETag").orElse(null)));
    }

    /**
     * Brings the kiosk's copy of the fleet up to date with what changed since; a service that does not know of changes is asked for
     * the whole of it.
     *
     * @param known the copy at hand
     * @param etag its entity tag
     * @return the new copy; empty when the one at hand is the newest
     * @throws ServiceProblem if the service refuses
     * @throws ServiceUnreachable if there is no answer
     */
    public Optional<Fresh> broughtUpToDate(KioskSnapshot known, String etag) throws ServiceProblem, ServiceUnreachable {
        HttpResponse<byte[]> response = send(request(ApiPaths.KIOSK_CHANGES + "?since=" + known.asOf())
                .header("If-None-Match", etag)
                .GET());
        if (response.statusCode() == 304) {
            return Optional.empty();
        }
        if (response.statusCode() == 404) {
            return snapshotUnless(etag);
        }
        KioskChanges changes = read(response, Wire.json().constructType(KioskChanges.class));
        return Optional.of(new Fresh(
                changes.applyTo(known), response.headers().firstValue("ETag").orElse(null)));
    }

    /**
     * Reads one thing.
     *
     * @param path path with query
     * @param type type of the answer
     * @param <T> type of the answer
     * @return the answer
     * @throws ServiceProblem if the service refuses
     * @throws ServiceUnreachable if there is no answer
     */
    public <T> T get(String path, Class<T> type) throws ServiceProblem, ServiceUnreachable {
        return read(send(request(path).GET()), Wire.json().constructType(type));
    }

    /**
     * Reads a paper.
     *
     * @param path path with query
     * @return bytes of the PDF
     * @throws ServiceProblem if the service refuses
     * @throws ServiceUnreachable if there is no answer
     */
    public byte[] pdf(String path) throws ServiceProblem, ServiceUnreachable {
        return bytes(path, "application/pdf");
    }

    /**
     * Reads bytes.
     *
     * @param path path with query
     * @param mediaType media type wanted
     * @return the bytes
     * @throws ServiceProblem if the service refuses
     * @throws ServiceUnreachable if there is no answer
     */
    public byte[] bytes(String path, String mediaType) throws ServiceProblem, ServiceUnreachable {
        HttpRequest.Builder request = request(path)
                .setHeader("Accept", mediaType + ", application/problem+json")
                .GET();
        HttpResponse<byte[]> response = send(request);
        check(response);
        return response.body();
    }

    /**
     * Reads a whole list, page by page.
     *
     * @param path path of the list
     * @param type type of its entries
     * @param <T> type of its entries
     * @return all entries
     * @throws ServiceProblem if the service refuses
     * @throws ServiceUnreachable if there is no answer
     */
    public <T> List<T> all(String path, Class<T> type) throws ServiceProblem, ServiceUnreachable {
        JavaType pageType = Wire.json().getTypeFactory().constructParametricType(Page.class, type);
        List<T> entries = new ArrayList<>();
        String next = null;
        do {
            String query = next == null
                    ? ""
                    : "?after=" + java.net.URLEncoder.encode(next, java.nio.charset.StandardCharsets.UTF_8);
            Page<T> page = read(send(request(path + query).GET()), pageType);
            entries.addAll(page.items());
            next = page.next();
        } while (next != null);
        return entries;
    }

    /**
     * Stores one thing.
     *
     * @param path path
     * @param body record of the contract
     * @throws ServiceProblem if the service refuses
     * @throws ServiceUnreachable if there is no answer
     */
    public void put(String path, Object body) throws ServiceProblem, ServiceUnreachable {
        putBytes(path, JSON, Wire.json().writeValueAsBytes(body));
    }

    /**
     * Stores bytes.
     *
     * @param path path
     * @param contentType their media type
     * @param body the bytes
     * @throws ServiceProblem if the service refuses
     * @throws ServiceUnreachable if there is no answer
     */
    public void putBytes(String path, String contentType, byte[] body) throws ServiceProblem, ServiceUnreachable {
        check(send(
                request(path).header("Content-Type", contentType).PUT(HttpRequest.BodyPublishers.ofByteArray(body))));
    }

    /**
     * Stores a file, piece by piece.
     *
     * @param path path
     * @param contentType media type of the file
     * @param file the file
     * @throws ServiceProblem if the service refuses
     * @throws ServiceUnreachable if there is no answer
     * @throws FileNotFoundException if there is no such file
     */
    public void putFile(String path, String contentType, Path file)
            throws ServiceProblem, ServiceUnreachable, FileNotFoundException {
        check(send(request(path).header("Content-Type", contentType).PUT(HttpRequest.BodyPublishers.ofFile(file))));
    }

    /**
     * Asks for an action without a body.
     *
     * @param path path
     * @throws ServiceProblem if the service refuses
     * @throws ServiceUnreachable if there is no answer
     */
    public void post(String path) throws ServiceProblem, ServiceUnreachable {
        check(send(request(path).POST(HttpRequest.BodyPublishers.noBody())));
    }

    /**
     * Hands something over.
     *
     * @param path path
     * @param body record or list of records of the contract
     * @throws ServiceProblem if the service refuses
     * @throws ServiceUnreachable if there is no answer
     */
    public void post(String path, Object body) throws ServiceProblem, ServiceUnreachable {
        check(send(request(path)
                .header("Content-Type", JSON)
                .POST(HttpRequest.BodyPublishers.ofByteArray(Wire.json().writeValueAsBytes(body)))));
    }

    /**
     * Asks for something with a body.
     *
     * @param path path
     * @param body record of the contract
     * @param type type of the answer
     * @param <T> type of the answer
     * @return the answer
     * @throws ServiceProblem if the service refuses
     * @throws ServiceUnreachable if there is no answer
     */
    public <T> T post(String path, Object body, Class<T> type) throws ServiceProblem, ServiceUnreachable {
        return read(
                send(request(path)
                        .header("Content-Type", JSON)
                        .POST(HttpRequest.BodyPublishers.ofByteArray(Wire.json().writeValueAsBytes(body)))),
                Wire.json().constructType(type));
    }

    /**
     * Ends one thing.
     *
     * @param path path
     * @throws ServiceProblem if the service refuses
     * @throws ServiceUnreachable if there is no answer
     */
    public void delete(String path) throws ServiceProblem, ServiceUnreachable {
        check(send(request(path).DELETE()));
    }

    /**
     * The same service for somebody else.
     *
     * @param otherToken token of a person signed on
     * @return another client
     */
    public ServiceClient as(String otherToken) {
        return new ServiceClient(base, otherToken, patience, http);
    }

    /**
     * The same service for somebody who does not wait as long.
     *
     * @param longest longest wait for one answer
     * @return another client
     */
    public ServiceClient withPatience(Duration longest) {
        return new ServiceClient(base, token, longest, http);
    }

    private HttpRequest.Builder request(String path) {
        return HttpRequest.newBuilder(base.resolve(path))
                .timeout(patience)
                .header("Authorization", "Bearer " + token)
                .header("Accept", JSON + ", application/problem+json");
    }

    private HttpResponse<byte[]> send(HttpRequest.Builder request) throws ServiceUnreachable {
        try {
            return http.get().send(request.build(), BodyHandlers.ofByteArray());
        } catch (IOException e) {
            throw new ServiceUnreachable("no answer from the service at " + base + ": " + words(e), e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new ServiceUnreachable("stopped while waiting for the service at " + base, e);
        }
    }

    private static String words(IOException e) {
        return e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
    }

    private <T> T read(HttpResponse<byte[]> response, JavaType type) throws ServiceProblem {
        check(response);
        try {
            return Wire.json().readValue(response.body(), type);
        } catch (JacksonException e) {
            throw new ServiceProblem(
                    502, "", "the service at " + base + " answered something unreadable: " + e.getOriginalMessage());
        }
    }

    private static void check(HttpResponse<byte[]> response) throws ServiceProblem {
        if (response.statusCode() >= 300) {
            throw problem(response);
        }
    }

    private static ServiceProblem problem(HttpResponse<byte[]> response) {
        int status = response.statusCode();
        try {
            JsonNode body = Wire.json().readTree(response.body());
            StringBuilder words = new StringBuilder(body.path("title").asString("The service refused"));
            append(words, ": ", body.path("detail").asString(""));
            append(words, " Field: ", body.path("field").asString(""));
            append(words, " ", body.path("hint").asString(""));
            return new ServiceProblem(status, body.path("type").asString(""), words + " (" + status + ")");
        } catch (JacksonException e) {
            return new ServiceProblem(status, "", "The service answered " + status + " without saying why");
        }
    }

    private static void append(StringBuilder words, String before, String text) {
        if (!text.isBlank()) {
            words.append(before).append(text);
        }
    }
}
