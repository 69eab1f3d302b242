package org.docksweep.service.checkins;

import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.MeasurementBody;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.Route;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.Verdict;
import org.docksweep.fleet.VisualItem;
import org.docksweep.judge.PositionState;
import org.docksweep.service.measurements.Measurements;
import org.docksweep.service.store.StoredJson;
import org.docksweep.service.web.Check;
import org.springframework.stereotype.Component;

/** Checks a check-in and brings it into the form in which two equal ones are equal. */
@Component
class CheckInCheck {
    private final Measurements measurements;

    CheckInCheck(Measurements measurements) {
        this.measurements = measurements;
    }

    /** All is there that must be; null lists become empty, sets sorted, instants cut to microseconds. */
    CheckInBody complete(UUID id, CheckInBody sent) {
        new Check()
                .that(id.equals(sent.id()), "id", "must be " + id + " as in the address, but is " + sent.id())
                .present(sent.tag(), "tag")
                .text(sent.modelCode(), 40, "modelCode")
                .text(sent.kioskId(), 80, "kioskId")
                .text(sent.operator(), 120, "operator")
                .present(sent.startedAt(), "startedAt")
                .present(sent.finishedAt(), "finishedAt")
                .present(sent.route(), "route")
                .present(sent.reason(), "reason")
                .optionalText(sent.judgeVersion(), 40, "judgeVersion")
                .refuseIfWrong();
        return plain(sent);
    }

    /** Refuses a complete body that contradicts itself or its cabinet model. */
    void fits(CheckInBody body, CabinetModel model) {
        Check check = new Check();
        check.that(
                !body.finishedAt().isBefore(body.startedAt()),
                "finishedAt",
                "must not be before startedAt, but is " + body.finishedAt() + " before " + body.startedAt());
        checkRoute(body, check);
        checkPositions(body, model, check);
        Set<String> points = new TreeSet<>();
        model.testPoints().stream().map(TestPoint::code).forEach(points::add);
        measurements.check(body.measurements(), points, check);
        check.refuseIfWrong();
    }

    private static CheckInBody plain(CheckInBody sent) {
        Set<VisualItem> damage = EnumSet.noneOf(VisualItem.class);
        if (sent.visualDamage() != null) {
            damage.addAll(sent.visualDamage());
        }
        return new CheckInBody(
                sent.id(),
                sent.tag(),
                sent.modelCode(),
                sent.returnListId(),
                sent.kioskId(),
                sent.operator(),
                StoredJson.cut(sent.startedAt()),
                StoredJson.cut(sent.finishedAt()),
                damage,
                sent.verdict(),
                sent.route(),
                sent.watch(),
                sent.reason(),
                sent.faultPositionCode(),
                sent.positions() == null ? List.of() : sent.positions(),
                sent.suspects() == null ? List.of() : sent.suspects(),
                sent.jobCode(),
                sent.judgeVersion(),
                sent.limitsVersion(),
                sent.measurements() == null
                        ? List.of()
                        : sent.measurements().stream().map(CheckInCheck::plain).toList());
    }

    private static MeasurementBody plain(MeasurementBody sent) {
        return sent == null
                ? null
                : new MeasurementBody(
                        sent.id(),
                        StoredJson.cut(sent.takenAt()),
                        sent.attempt(),
                        sent.recordingSha256(),
                        sent.ambientCelsius(),
                        sent.judgement());
    }

    private static void checkRoute(CheckInBody body, Check check) {
        check.that(
                        (body.jobCode() != null) == (body.route() == Route.BENCH),
                        "jobCode",
                        "must be there exactly when the route is BENCH; the route is " + body.route())
                .that(
                        body.route() != Route.SHELF || body.verdict() == Verdict.PASS,
                        "route",
                        "only a cabinet that passed goes to the shelf; the verdict is " + body.verdict())
                .that(
                        body.route() == Route.SAFETY_HOLD
                                || body.visualDamage().stream().noneMatch(VisualItem::forcesSafetyHold),
                        "route",
                        "damage to " + body.visualDamage() + " means SAFETY_HOLD whatever the sweep says, but the route"
                                + " is " + body.route())
                .that(body.limitsVersion() >= 0, "limitsVersion", "must be at least 0, but is " + body.limitsVersion());
    }

    private static void checkPositions(CheckInBody body, CabinetModel model, Check check) {
        Set<String> known = new TreeSet<>();
        model.positions().forEach(p -> known.add(p.code()));
        check.that(
                body.faultPositionCode() == null || known.contains(body.faultPositionCode()),
                "faultPositionCode",
                "model " + model.code() + " has positions " + known + ", but this is " + body.faultPositionCode());
        Set<String> seen = new HashSet<>();
        for (int i = 0; i < body.positions().size(); i++) {
            PositionState position = body.positions().get(i);
            String at = "positions[" + i + "]";
            check.present(position, at);
            if (position == null) {
                continue;
            }
            check.that(
                            position.positionCode() != null && known.contains(position.positionCode()),
                            at + ".positionCode",
                            "model " + model.code() + " has positions " + known + ", but this is "
                                    + position.positionCode())
                    .that(
                            seen.add(String.valueOf(position.positionCode())),
                            at + ".positionCode",
                            "position " + position.positionCode() + " is given twice")
                    .present(position.state(), at + ".state")
                    .optionalText(position.headline(), 200, at + ".headline");
        }
        for (int i = 0; i < body.suspects().size(); i++) {
            check.present(body.suspects().get(i), "suspects[" + i + "]");
        }
    }
}
