package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.DriftRow;
import org.docksweep.contract.FleetStatus;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.contract.MeasurementBody;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Reasons;
import org.docksweep.gate.Reading;
import org.docksweep.gate.ReadingKind;
import org.docksweep.gate.ReadingState;
import org.docksweep.judge.PointJudgement;
import org.docksweep.survival.Trend;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

@ExtendWith(RunningService.class)
class TrendsTest {
    private final Api api;
    private final OwnDrivers drivers;
    private final AssetTag tag;

    TrendsTest(Api api) {
        this.api = api;
        this.drivers = OwnDrivers.register(api);
        this.tag = drivers.newCabinet(api);
    }

    private void comesBack(int night, ReadingKind kind, double value, ReadingState state) {
        CheckInBody body = House.pass(tag, drivers.model());
        Instant at = House.NIGHT.plus(Duration.ofDays(7L * night));
        List<MeasurementBody> measurements = body.measurements().stream()
                .map(m -> m.judgement().testPointCode().equals("HF") ? reading(m, at, kind, value, state) : m)
                .toList();
        Api.Answer answer = House.put(
                api,
                new CheckInBody(
                        body.id(),
                        tag,
                        body.modelCode(),
                        null,
                        body.kioskId(),
                        body.operator(),
                        at,
                        at.plusSeconds(20),
                        body.visualDamage(),
                        body.verdict(),
                        body.route(),
                        false,
                        body.reason(),
                        null,
                        body.positions(),
                        List.of(),
                        null,
                        body.judgeVersion(),
                        body.limitsVersion(),
                        measurements));
        assertThat(answer.status()).as("%s", answer).isEqualTo(201);
    }

    private static MeasurementBody reading(
            MeasurementBody m, Instant at, ReadingKind kind, double value, ReadingState state) {
        PointJudgement j = m.judgement();
        Reading reading = new Reading(kind, "HF", "HF", value, 0.1, null, null, null, state);
        return new MeasurementBody(
                m.id(),
                at,
                1,
                null,
                18.0,
                new PointJudgement(
                        "HF",
                        j.verdict(),
                        j.prompt(),
                        j.reason(),
                        j.impedance(),
                        null,
                        List.of(reading),
                        List.of(),
                        List.of()));
    }

    private List<DriftRow> watched() {
        return api.get(ApiPaths.DRIFT_WATCH).listOf(DriftRow.class).stream()
                .filter(r -> r.tag().equals(tag))
                .toList();
    }

    @Test
    void warnsOfALevelThatGoesReturnByReturn() {
        double[] levels = {0.1, -0.1, 0.0, -0.8, -1.6, -2.4};
        for (int i = 0; i < levels.length; i++) {
            comesBack(i, ReadingKind.WAY_LEVEL, levels[i], ReadingState.OK);
        }

        assertThat(watched()).singleElement().satisfies(row -> {
            assertThat(row.state()).isEqualTo(Trend.State.FALLING);
            assertThat(row.positionCode()).isEqualTo("HF");
            assertThat(row.points()).hasSize(6);
            assertThat(Reasons.text(row.words(), Locale.ENGLISH))
                    .isEqualTo("HF of " + tag
                            + " has lost 2.4 dB in 3 returns. Send it to the bench before the next show.");
        });
        assertThat(api.get(ApiPaths.FLEET_STATUS).as(FleetStatus.class).drifting())
                .extracting(DriftRow::tag)
                .contains(tag);
    }

    @Test
    void warnsOfAContactThatGrows() {
        double[] ohms = {5.60, 5.62, 5.59, 5.61, 5.85, 6.1, 6.4};
        for (int i = 0; i < ohms.length; i++) {
            comesBack(i, ReadingKind.DC_RESISTANCE_20C, ohms[i], ReadingState.OK);
        }

        assertThat(watched())
                .singleElement()
                .satisfies(
                        row -> assertThat(Reasons.text(row.words(), Locale.ENGLISH))
                                .isEqualTo(
                                        "The resistance at HF of " + tag
                                                + " has risen by 14 % in 3 returns. Look at contacts and lead-in before the next show."));
    }

    @Test
    void staysQuietAboutWhatScatters() {
        double[] levels = {0.3, -0.2, 0.4, -0.5, 0.2, -0.4, 0.5};
        for (int i = 0; i < levels.length; i++) {
            comesBack(i, ReadingKind.WAY_LEVEL, levels[i], ReadingState.OK);
        }

        assertThat(watched()).isEmpty();
        assertThat(api.get(ApiPaths.DRIFT_WATCH + "/" + tag).listOf(DriftRow.class))
                .singleElement()
                .satisfies(row -> {
                    assertThat(row.state()).isEqualTo(Trend.State.STEADY);
                    assertThat(row.lowerLimit()).isLessThan(row.start());
                });
    }

    @Test
    void leavesReadingsAtFaultToTheGate() {
        for (int i = 0; i < 6; i++) {
            comesBack(i, ReadingKind.PEAK_FREQUENCY, 500, i < 3 ? ReadingState.OK : ReadingState.FAULT);
        }

        assertThat(api.get(ApiPaths.DRIFT_WATCH + "/" + tag).listOf(DriftRow.class))
                .singleElement()
                .satisfies(row -> {
                    assertThat(row.points()).hasSize(3);
                    assertThat(row.state()).isEqualTo(Trend.State.TOO_FEW);
                });
    }

    @Test
    void beginsANewStoryAfterARepair() {
        double[] levels = {0, 0, 0, -0.8, -1.6, -2.4};
        for (int i = 0; i < levels.length; i++) {
            comesBack(i, ReadingKind.WAY_LEVEL, levels[i], ReadingState.OK);
        }
        assertThat(watched()).hasSize(1);

        Instant repaired = House.NIGHT.plus(Duration.ofDays(40));
        api.post(
                ApiPaths.CABINETS + "/" + tag + ApiPaths.HISTORY,
                List.of(new HistoryEvent(
                        UUID.randomUUID(),
                        tag,
                        "HF",
                        repaired,
                        "Ines Duna",
                        HistoryEvent.Kind.REPAIRED,
                        Reason.of("verdict-pass"))));
        assertThat(watched()).isEmpty();

        comesBack(7, ReadingKind.WAY_LEVEL, 0.1, ReadingState.OK);
        assertThat(watched()).isEmpty();
        assertThat(api.get(ApiPaths.DRIFT_WATCH + "/" + tag).listOf(DriftRow.class))
                .singleElement()
                .satisfies(row -> assertThat(row.points()).hasSize(1));
    }

    @Test
    void refusesACabinetNobodyKnows() {
        assertThat(api.get(ApiPaths.DRIFT_WATCH + "/" + House.newTag())
                        .problem()
                        .status())
                .isEqualTo(404);
    }
}
