package org.docksweep.service.bench;

import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import org.docksweep.contract.BenchActionBody;
import org.docksweep.contract.FindingBody;
import org.docksweep.contract.MeasurementBody;
import org.docksweep.contract.PartExchangeBody;
import org.docksweep.contract.ProofSweepBody;
import org.docksweep.contract.StepTickBody;
import org.docksweep.fleet.BareDriver;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ConfirmedCause;
import org.docksweep.fleet.ProcedureCard;
import org.docksweep.fleet.ProcedureCards;
import org.docksweep.fleet.Sighting;
import org.docksweep.fleet.TestPoint;
import org.docksweep.service.measurements.Measurements;
import org.docksweep.service.store.StoredJson;
import org.docksweep.service.web.Check;
import org.docksweep.service.web.Times;
import org.springframework.stereotype.Component;

/** Checks records of a job and brings them into the form in which two equal ones are equal. */
@Component
class RecordCheck {
    private static final int MOST_LABOUR_MINUTES = 10_000;
    private static final int MOST_PIECES = 1_000;
    private static final double HIGHEST_OHM = 100_000;
    private static final int MOST_MEASUREMENTS = 60;

    private final Times times;
    private final Measurements measurements;

    RecordCheck(Times times, Measurements measurements) {
        this.times = times;
        this.measurements = measurements;
    }

    private Check base(UUID id, UUID sent, Instant at, String by, String bench) {
        Check check = new Check()
                .that(id.equals(sent), "id", "must be " + id + " as in the address, but is " + sent)
                .text(by, 120, "by")
                .text(bench, 80, "bench");
        times.notInFuture(at, "at", check);
        return check;
    }

    BenchActionBody action(UUID id, BenchActionBody body) {
        Check check = base(id, body.id(), body.at(), body.by(), body.bench())
                .present(body.verb(), "verb")
                .that(
                        (body.partNumber() != null) == (body.verb() == BenchActionBody.Verb.WAIT_FOR_PART),
                        "partNumber",
                        "must be given exactly with WAIT_FOR_PART; the verb is " + body.verb())
                .optionalText(body.partNumber(), 40, "partNumber")
                .optionalText(body.text(), 500, "text");
        boolean reasonNeeded =
                body.verb() == BenchActionBody.Verb.SCRAP || body.verb() == BenchActionBody.Verb.RETURN_UNREPAIRED;
        check.that(
                        !reasonNeeded || (body.text() != null && !body.text().isBlank()),
                        "text",
                        "must say why with " + body.verb())
                .that(
                        body.labourMinutes() == null || closes(body.verb()),
                        "labourMinutes",
                        "is given when a job is closed only; the verb is " + body.verb())
                .that(
                        body.labourMinutes() == null
                                || (body.labourMinutes() >= 0 && body.labourMinutes() <= MOST_LABOUR_MINUTES),
                        "labourMinutes",
                        "must be from 0 to " + MOST_LABOUR_MINUTES + ", but is " + body.labourMinutes());
        check.refuseIfWrong();
        return new BenchActionBody(
                id,
                body.verb(),
                body.expectedRevision(),
                StoredJson.cut(body.at()),
                body.by(),
                body.bench(),
                body.partNumber(),
                body.text(),
                body.labourMinutes());
    }

    private static boolean closes(BenchActionBody.Verb verb) {
        return verb == BenchActionBody.Verb.SIGN_OFF
                || verb == BenchActionBody.Verb.SCRAP
                || verb == BenchActionBody.Verb.RETURN_UNREPAIRED;
    }

    /**
     * A finding.
     *
     * @param model cabinet model, or null of a spare on its own
     */
    FindingBody finding(UUID id, FindingBody body, CabinetModel model) {
        Check check = base(id, body.id(), body.at(), body.by(), body.bench());
        position(body.positionCode(), model, "positionCode", check);
        check.optionalText(body.elementId(), 40, "elementId")
                .that(
                        body.coilResistanceOhm() == null
                                || (body.coilResistanceOhm() >= 0 && body.coilResistanceOhm() <= HIGHEST_OHM),
                        "coilResistanceOhm",
                        "must be from 0 to " + HIGHEST_OHM + " ohm, but is " + body.coilResistanceOhm()
                                + "; an open coil is said with coilOpen")
                .that(
                        !body.coilOpen() || body.coilResistanceOhm() == null,
                        "coilOpen",
                        "an open coil has no resistance, but " + body.coilResistanceOhm() + " ohm are given")
                .that(
                        body.coilCelsius() == null || (body.coilCelsius() >= -60 && body.coilCelsius() <= 200),
                        "coilCelsius",
                        "must be from -60 to 200 degrees Celsius, but is " + body.coilCelsius())
                .present(body.cause(), "cause")
                .present(body.charge(), "charge")
                .optionalText(body.causeText(), 500, "causeText")
                .that(
                        body.cause() != ConfirmedCause.OTHER
                                || (body.causeText() != null
                                        && !body.causeText().isBlank()),
                        "causeText",
                        "must say what it is when the cause is OTHER");
        check.refuseIfWrong();
        Set<Sighting> seen = new TreeSet<>();
        if (body.seen() != null) {
            seen.addAll(body.seen());
        }
        return new FindingBody(
                id,
                StoredJson.cut(body.at()),
                body.by(),
                body.bench(),
                body.positionCode(),
                body.elementId(),
                body.coilResistanceOhm(),
                body.coilCelsius(),
                body.coilOpen(),
                seen,
                body.cause(),
                body.causeText(),
                body.charge());
    }

    private static void position(String code, CabinetModel model, String field, Check check) {
        if (code == null || model == null) {
            check.that(code == null, field, "must be left out here, but is " + code);
            return;
        }
        Set<String> known = new TreeSet<>();
        model.positions().forEach(p -> known.add(p.code()));
        check.that(
                known.contains(code),
                field,
                "model " + model.code() + " has positions " + known + ", but this is " + code);
    }

    PartExchangeBody exchange(UUID id, PartExchangeBody body, CabinetModel model) {
        Check check = base(id, body.id(), body.at(), body.by(), body.bench());
        if (body.positionCode() != null) {
            position(body.positionCode(), model, "positionCode", check);
        }
        check.optionalText(body.elementId(), 40, "elementId")
                .that(
                        body.removed() != null || body.fitted() != null,
                        "fitted",
                        "is missing: say what was taken out, what was put in, or both");
        PartExchangeBody.Removed removed = body.removed();
        if (removed != null) {
            check.present(removed.what(), "removed.what")
                    .optionalText(removed.serial(), 80, "removed.serial")
                    .present(removed.fate(), "removed.fate")
                    .that(
                            removed.what() == PartExchangeBody.What.OTHER || body.positionCode() != null,
                            "positionCode",
                            "must be given when a driver or its moving part is taken out")
                    .that(
                            removed.fate() != PartExchangeBody.Fate.KEPT_FOR_REPAIR
                                    || (removed.what() == PartExchangeBody.What.DRIVER_UNIT
                                            && removed.serial() != null),
                            "removed.fate",
                            "only a whole driver with a serial is kept for repair");
        }
        if (body.fitted() != null) {
            fitted(body.fitted(), check);
        }
        check.refuseIfWrong();
        return new PartExchangeBody(
                id,
                StoredJson.cut(body.at()),
                body.by(),
                body.bench(),
                body.positionCode(),
                body.elementId(),
                removed,
                body.fitted());
    }

    void fitted(PartExchangeBody.Fitted fitted, Check check) {
        check.text(fitted.partNumber(), 40, "fitted.partNumber")
                .optionalText(fitted.serial(), 80, "fitted.serial")
                .that(
                        fitted.quantity() >= 1 && fitted.quantity() <= MOST_PIECES,
                        "fitted.quantity",
                        "must be from 1 to " + MOST_PIECES + ", but is " + fitted.quantity())
                .that(
                        fitted.serial() == null || fitted.quantity() == 1,
                        "fitted.quantity",
                        "must be 1 for a piece with a serial, but is " + fitted.quantity());
    }

    StepTickBody tick(UUID id, StepTickBody body, CabinetModel model) {
        Check check = base(id, body.id(), body.at(), body.by(), body.bench()).present(body.purpose(), "purpose");
        if (body.positionCode() != null) {
            position(body.positionCode(), model, "positionCode", check);
        }
        if (body.purpose() != null) {
            List<String> steps = ProcedureCards.generic(body.purpose()).steps().stream()
                    .map(ProcedureCard.Step::code)
                    .toList();
            check.that(
                    body.stepCode() != null && steps.contains(body.stepCode()),
                    "stepCode",
                    "card " + body.purpose() + " has the steps " + steps + ", but this is " + body.stepCode());
        }
        check.refuseIfWrong();
        return new StepTickBody(
                id,
                StoredJson.cut(body.at()),
                body.by(),
                body.bench(),
                body.purpose(),
                body.positionCode(),
                body.stepCode(),
                body.done());
    }

    /**
     * A sweep of a proof.
     *
     * @param model cabinet model, or null of a spare on its own
     */
    ProofSweepBody proof(UUID id, ProofSweepBody body, CabinetModel model) {
        Check check = base(id, body.id(), body.at(), body.by(), body.bench())
                .present(body.subject(), "subject")
                .present(body.polarity(), "polarity")
                .text(body.judgeVersion(), 40, "judgeVersion")
                .that(
                        body.measurements() != null
                                && !body.measurements().isEmpty()
                                && body.measurements().size() <= MOST_MEASUREMENTS,
                        "measurements",
                        "must hold 1 to " + MOST_MEASUREMENTS + " measurements");
        check.refuseIfWrong();
        boolean bare = body.subject() == ProofSweepBody.Subject.BARE_DRIVER;
        if (model == null || !bare) {
            check.that(
                            model != null || bare,
                            "subject",
                            "must be BARE_DRIVER for a driver on its own, but is " + body.subject())
                    .that(
                            body.positionCode() == null,
                            "positionCode",
                            "must be left out here, but is " + body.positionCode());
        } else {
            check.present(body.positionCode(), "positionCode");
            if (body.positionCode() != null) {
                position(body.positionCode(), model, "positionCode", check);
            }
        }
        Set<String> points = new TreeSet<>();
        if (bare || model == null) {
            points.add(BareDriver.TEST_POINT);
        } else {
            model.testPoints().stream().map(TestPoint::code).forEach(points::add);
        }
        measurements.check(body.measurements(), points, check);
        check.refuseIfWrong();
        return new ProofSweepBody(
                id,
                StoredJson.cut(body.at()),
                body.by(),
                body.bench(),
                body.subject(),
                body.positionCode(),
                body.soundsClean(),
                body.polarity(),
                body.judgeVersion(),
                body.limitsVersion(),
                body.measurements().stream().map(RecordCheck::cut).toList());
    }

    private static MeasurementBody cut(MeasurementBody sent) {
        return new MeasurementBody(
                sent.id(),
                StoredJson.cut(sent.takenAt()),
                sent.attempt(),
                sent.recordingSha256(),
                sent.ambientCelsius(),
                sent.judgement());
    }
}
