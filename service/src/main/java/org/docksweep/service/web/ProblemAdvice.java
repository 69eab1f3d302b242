package org.docksweep.service.web;

import jakarta.servlet.http.HttpServletRequest;
import java.sql.SQLException;
import java.util.Collection;
import java.util.List;
import java.util.stream.Collectors;
import org.docksweep.contract.Problem;
import org.docksweep.contract.ProblemTypes;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.core.convert.ConversionFailedException;
import org.springframework.dao.ConcurrencyFailureException;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.http.converter.HttpMessageNotReadableException;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.security.core.AuthenticationException;
import org.springframework.web.ErrorResponse;
import org.springframework.web.bind.MissingRequestValueException;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.RestControllerAdvice;
import org.springframework.web.context.request.async.AsyncRequestNotUsableException;
import org.springframework.web.method.annotation.MethodArgumentTypeMismatchException;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.DatabindException;
import tools.jackson.databind.exc.InvalidFormatException;
import tools.jackson.databind.exc.MismatchedInputException;
import tools.jackson.databind.exc.UnrecognizedPropertyException;

/** Turns everything that goes wrong in a controller into problem details; no stack trace ever leaves the house. */
@RestControllerAdvice
class ProblemAdvice {
    private static final Logger LOG = LoggerFactory.getLogger(ProblemAdvice.class);

    @ExceptionHandler
    ResponseEntity<Problem> refused(Refusal refusal, HttpServletRequest request) {
        return answer(refusal, request);
    }

    @ExceptionHandler
    ResponseEntity<Problem> unreadable(HttpMessageNotReadableException e, HttpServletRequest request) {
        for (Throwable cause = e; cause != null; cause = cause.getCause()) {
            if (cause instanceof Refusal refusal) {
                return answer(refusal, request);
            }
        }
        if (e.getCause() instanceof UnrecognizedPropertyException unknown) {
            return answer(
                    Refusal.badField(
                            path(unknown),
                            "there is no field \"" + printable(unknown.getPropertyName()) + "\" here",
                            "Take the field out; known here: "
                                    + unknown.getKnownPropertyIds().stream()
                                            .map(Object::toString)
                                            .sorted()
                                            .collect(Collectors.joining(", "))),
                    request);
        }
        if (e.getCause() instanceof DatabindException wrong && !path(wrong).isEmpty()) {
            return answer(
                    Refusal.badField(path(wrong), reason(wrong), "Correct the field and send the whole body again."),
                    request);
        }
        String detail = e.getCause() instanceof JacksonException broken
                ? place(broken) + reason(broken)
                : "the body is missing or is not JSON";
        return answer(
                Refusal.unreadable(detail, "Send one JSON value in UTF-8 as the API description has it."), request);
    }

    /** What the innermost cause says: records name the thing, what was expected and what to do. */
    private static String reason(JacksonException e) {
        Throwable cause = e;
        while (cause.getCause() != null && cause.getCause() != cause) {
            cause = cause.getCause();
        }
        if (cause instanceof NullPointerException) {
            return "a needed value is missing";
        }
        if (cause instanceof InvalidFormatException wrong) {
            return "\"" + printable(String.valueOf(wrong.getValue())) + "\" is not " + expected(wrong.getTargetType());
        }
        if (cause instanceof MismatchedInputException wrong && wrong.getTargetType() != null) {
            return "is missing or of another kind; expected " + expected(wrong.getTargetType());
        }
        String message = cause instanceof JacksonException jackson ? jackson.getOriginalMessage() : cause.getMessage();
        // Where the parser tells of its own settings and classes, people have no use for it.
        return printable(String.valueOf(message)
                .replaceAll(" \\(start marker at .*", "")
                .replaceAll("\\b(?:[a-z]\\w*\\.)+(?=[A-Z])", ""));
    }

    private static String path(DatabindException e) {
        StringBuilder path = new StringBuilder();
        for (JacksonException.Reference step : e.getPath()) {
            if (step.getPropertyName() != null) {
                path.append(path.isEmpty() ? "" : ".").append(step.getPropertyName());
            } else if (step.getIndex() >= 0) {
                path.append('[').append(step.getIndex()).append(']');
            }
        }
        return printable(path.toString());
    }

    private static String place(JacksonException e) {
        return e.getLocation() == null || e.getLocation().getLineNr() < 1
                ? ""
                : "line " + e.getLocation().getLineNr() + ", column "
                        + e.getLocation().getColumnNr() + ": ";
    }

    @ExceptionHandler
    ResponseEntity<Problem> badParameter(MethodArgumentTypeMismatchException e, HttpServletRequest request) {
        Throwable cause = e.getCause() instanceof ConversionFailedException failed ? failed.getCause() : e.getCause();
        Class<?> wanted = e.getRequiredType();
        boolean ours = cause instanceof IllegalArgumentException
                && wanted != null
                && wanted.getName().startsWith("org.docksweep.");
        return answer(
                Refusal.badField(
                        e.getName(),
                        ours && !wanted.isEnum()
                                ? cause.getMessage()
                                : "\"" + printable(String.valueOf(e.getValue())) + "\" is not "
                                        + (wanted == null ? "readable" : expected(wanted)),
                        "Correct " + e.getName() + " in the address."),
                request);
    }

    private static String expected(Class<?> wanted) {
        if (wanted.isEnum()) {
            return "one of " + List.of(wanted.getEnumConstants());
        }
        if (Collection.class.isAssignableFrom(wanted) || wanted.isArray()) {
            return "a list";
        }
        return switch (wanted.getSimpleName()) {
            case "UUID" -> "a UUID like 0f8fad5b-d9cb-469f-a165-70867728950e";
            case "Instant" -> "an instant like 2026-03-14T02:10:00Z";
            case "LocalDate" -> "a date like 2026-03-14";
            case "String" -> "a text";
            case "boolean", "Boolean" -> "true or false";
            case "double", "Double" -> "a number";
            case "int", "Integer", "long", "Long" -> "a whole number";
            default -> "an object with the fields of a " + wanted.getSimpleName();
        };
    }

    @ExceptionHandler
    ResponseEntity<Problem> missingParameter(MissingRequestValueException e, HttpServletRequest request) {
        return answer(
                Refusal.badField("request", e.getBody().getDetail(), "Add what is missing to the request."), request);
    }

    /** Security decides these; they pass through to its own answers. */
    @ExceptionHandler({AccessDeniedException.class, AuthenticationException.class})
    ResponseEntity<Problem> security(RuntimeException e) {
        throw e;
    }

    /** Whoever asked is gone, a listener of a stream mostly: nobody is there to be told. */
    @ExceptionHandler
    void gone(AsyncRequestNotUsableException e) {
        LOG.debug("the caller is gone", e);
    }

    @ExceptionHandler
    ResponseEntity<Problem> anythingElse(Exception e, HttpServletRequest request) {
        if (holdsNul(e)) {
            return answer(
                    Refusal.unreadable(
                            "the address or the body holds the character U+0000, which no text here can hold",
                            "Send the same without it."),
                    request);
        }
        if (e instanceof ErrorResponse response && response.getStatusCode().is4xxClientError()) {
            return answer(ofStatus(response.getStatusCode().value(), request), request, response);
        }
        LOG.error("{} {} failed", request.getMethod(), request.getRequestURI(), e);
        return answer(ofStatus(500, request), request);
    }

    /** PostgreSQL takes every character in a text but U+0000 (SQL states 22021, and 22P05 within JSON). */
    private static boolean holdsNul(Exception e) {
        for (Throwable cause = e; cause != null; cause = cause.getCause()) {
            if (cause instanceof SQLException refused
                    && ("22021".equals(refused.getSQLState()) || "22P05".equals(refused.getSQLState()))) {
                return true;
            }
        }
        return false;
    }

    /** Others held the same rows longer than anybody should wait; nothing is wrong with the request. */
    @ExceptionHandler
    ResponseEntity<Problem> crowded(ConcurrencyFailureException e, HttpServletRequest request) {
        LOG.warn("{} {} gave up waiting", request.getMethod(), request.getRequestURI(), e);
        Refusal refusal = Refusal.of(
                ProblemTypes.TRY_LATER,
                "Try again later",
                503,
                "others work on the same things right now; nothing of this request was stored",
                "Send the same request again in a moment.");
        return ResponseEntity.status(HttpStatus.SERVICE_UNAVAILABLE)
                .header(HttpHeaders.RETRY_AFTER, "1")
                .contentType(MediaType.parseMediaType(Problem.MEDIA_TYPE))
                .body(refusal.problem(request.getRequestURI()));
    }

    /**
     * The refusal for a bare status.
     *
     * @param status HTTP status of 400 and above
     * @param request request
     * @return the refusal
     */
    static Refusal ofStatus(int status, HttpServletRequest request) {
        return switch (status) {
            case 401 ->
                Refusal.of(
                        ProblemTypes.NOT_SIGNED_ON, "Not signed on", 401, "a token is needed", "Send a valid token.");
            case 403 ->
                Refusal.of(
                        ProblemTypes.NOT_ALLOWED,
                        "Not allowed",
                        403,
                        "the token does not allow this",
                        "Ask a manager.");
            case 404 ->
                Refusal.notFound(
                        null, "there is nothing at this address", "Look the address up in the API description.");
            case 405, 406, 415 ->
                Refusal.of(
                        ProblemTypes.UNSUPPORTED,
                        "Not offered here",
                        status,
                        status == 405
                                ? "this address does not offer " + printable(request.getMethod())
                                : status == 415
                                        ? "this address does not read \"" + printable(request.getContentType()) + "\""
                                        : "this address cannot answer as \"" + printable(request.getHeader("Accept"))
                                                + "\"",
                        "Look the address up in the API description.");
            case 413 ->
                Refusal.of(ProblemTypes.TOO_LARGE, "Too large", 413, "the body is too large", "Send less at once.");
            default ->
                status < 500
                        ? Refusal.of(
                                ProblemTypes.UNREADABLE,
                                "Cannot be read",
                                status,
                                "the request cannot be read",
                                "Look the address up in the API description.")
                        : Refusal.of(
                                ProblemTypes.DEFECT,
                                "Defect of the service",
                                500,
                                "something went wrong inside the service; nothing of this request was stored half",
                                "Try again; if it happens again, tell whoever looks after the service the time.");
        };
    }

    private static ResponseEntity<Problem> answer(Refusal refusal, HttpServletRequest request) {
        return answer(refusal, request, null);
    }

    private static ResponseEntity<Problem> answer(Refusal refusal, HttpServletRequest request, ErrorResponse headers) {
        Problem problem = refusal.problem(request.getRequestURI());
        ResponseEntity.BodyBuilder builder = ResponseEntity.status(HttpStatus.valueOf(problem.status()));
        if (headers != null) {
            builder.headers(headers.getHeaders());
        }
        return builder.contentType(MediaType.parseMediaType(Problem.MEDIA_TYPE)).body(problem);
    }

    /** At most 300 characters without control characters, so that nothing sent to us comes back dressed up. */
    private static String printable(String text) {
        String plain = String.valueOf(text).replaceAll("\\p{Cntrl}", "?");
        return plain.length() <= 300 ? plain : plain.substring(0, 299) + "…";
    }
}
