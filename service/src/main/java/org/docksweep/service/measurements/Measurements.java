package org.docksweep.service.measurements;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.docksweep.contract.MeasurementBody;
import org.docksweep.service.store.AddedRows;
import org.docksweep.service.store.Question;
import org.docksweep.service.store.StoredJson;
import org.docksweep.service.web.Check;
import org.docksweep.service.web.Refusal;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** Keeps the measurements of check-ins. Writes join the caller's transaction. */
@Service
@Transactional(propagation = Propagation.MANDATORY)
public class Measurements {
    private static final int MOST_ATTEMPTS = 99;
    /** A statement takes so many values and more; a key tells of the rest. */
    private static final int MOST_ASKED = 20_000;

    private final MeasurementRows rows;
    private final Curves curves;
    private final AddedRows added;
    private final Clock clock;

    Measurements(MeasurementRows rows, Curves curves, AddedRows added, Clock clock) {
        this.rows = rows;
        this.curves = curves;
        this.added = added;
        this.clock = clock;
    }

    /**
     * Checks measurements before anything is stored.
     *
     * @param measurements measurements as sent
     * @param testPointCodes test points of the model they were judged as
     * @param check takes the errors
     */
    @Transactional(propagation = Propagation.SUPPORTS)
    public void check(List<MeasurementBody> measurements, Set<String> testPointCodes, Check check) {
        Set<UUID> ids = new HashSet<>();
        for (int i = 0; i < measurements.size(); i++) {
            MeasurementBody body = measurements.get(i);
            String at = "measurements[" + i + "].";
            check.present(body, "measurements[" + i + "]");
            if (body == null) {
                continue;
            }
            check.present(body.id(), at + "id")
                    .that(body.id() == null || ids.add(body.id()), at + "id", "is given twice")
                    .present(body.takenAt(), at + "takenAt")
                    .that(
                            body.attempt() >= 1 && body.attempt() <= MOST_ATTEMPTS,
                            at + "attempt",
                            "must be from 1 to " + MOST_ATTEMPTS + ", but is " + body.attempt())
                    .that(
                            body.recordingSha256() == null
                                    || body.recordingSha256().matches("[0-9a-f]{64}"),
                            at + "recordingSha256",
                            "must be 64 hex digits in lower case")
                    .that(
                            body.ambientCelsius() == null
                                    || (body.ambientCelsius() >= -60 && body.ambientCelsius() <= 80),
                            at + "ambientCelsius",
                            "must be from -60 to 80 degrees Celsius, but is " + body.ambientCelsius())
                    .present(body.judgement(), at + "judgement");
            if (body.judgement() != null) {
                check.present(body.judgement().verdict(), at + "judgement.verdict")
                        .that(
                                testPointCodes.contains(body.judgement().testPointCode()),
                                at + "judgement.testPointCode",
                                "the model has test points " + testPointCodes + ", but this is "
                                        + body.judgement().testPointCode());
            }
        }
    }

    /**
     * Whether ids of measurements were used before, to be asked together with other things.
     *
     * @param measurements measurements, checked or not
     * @return the question, for {@link #store}; answers are words for a refusal
     */
    public static Question<String> usedIds(List<MeasurementBody> measurements) {
        Object[] ids = measurements.stream()
                .filter(Objects::nonNull)
                .map(MeasurementBody::id)
                .filter(Objects::nonNull)
                .limit(MOST_ASKED)
                .toArray();
        if (ids.length == 0) {
            return Question.withoutAnswers();
        }
        return new Question<>(
                "select id, check_in_id from measurement where id in ("
                        + String.join(", ", Collections.nCopies(ids.length, "?")) + ")",
                (row, number) ->
                        "measurement " + row.getObject(1) + " belongs to check-in " + row.getObject(2) + " already",
                ids);
    }

    /**
     * Stores the measurements of a check-in right before the commit, behind the check-in.
     *
     * @param checkInId the check-in
     * @param measurements checked measurements
     * @param usedIds what {@link #usedIds} asked
     * @throws Refusal if an id was used before, or a judgement is too large
     */
    public void store(UUID checkInId, List<MeasurementBody> measurements, Question<String> usedIds) {
        usedIds.answers().stream().findFirst().ifPresent(words -> {
            throw Refusal.idReused(words, "Give every measurement an id of its own.");
        });
        LocalDate today = LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
        List<Object[]> headers = new ArrayList<>();
        List<Object[]> judgements = new ArrayList<>();
        for (int i = 0; i < measurements.size(); i++) {
            MeasurementBody body = measurements.get(i);
            String json = StoredJson.write(body.judgement());
            if (json.length() > Curve.MOST_CHARACTERS) {
                throw Refusal.badField(
                        "measurements[" + i + "].judgement",
                        "has " + json.length() + " characters of JSON, at most " + Curve.MOST_CHARACTERS + " are kept",
                        "Send curves on a grid of at most some thousand points.");
            }
            headers.add(Measurement.values(checkInId, i, body));
            judgements.add(new Object[] {body.id(), today, json});
        }
        added.later(Measurement.INSERT, headers);
        added.later(Curve.INSERT, judgements);
    }

    /**
     * Measurements of a check-in.
     *
     * @param checkInId the check-in
     * @return in the order they were sent; where retention removed a curve, with what the header says of the judgement
     */
    public List<MeasurementBody> of(UUID checkInId) {
        List<Measurement> headers = rows.findByCheckInIdOrderByLineNumber(checkInId);
        Map<UUID, Curve> judgements = curves
                .findAllById(headers.stream().map(Measurement::getId).toList())
                .stream()
                .collect(Collectors.toMap(Curve::getId, Function.identity()));
        return headers.stream()
                .map(header -> header.body(
                        judgements.containsKey(header.getId())
                                ? judgements.get(header.getId()).judgement()
                                : header.withoutCurve()))
                .toList();
    }
}
