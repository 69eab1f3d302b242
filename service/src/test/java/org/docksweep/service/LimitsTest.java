package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import org.docksweep.circuit.CircuitCompiler;
import org.docksweep.circuit.CircuitFault;
import org.docksweep.circuit.PointCircuit;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.LessonBody;
import org.docksweep.contract.LimitRehearsal;
import org.docksweep.contract.MeasurementBody;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.contract.TaughtPoint;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Route;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.Knowledge;
import org.docksweep.gate.LimitSet;
import org.docksweep.gate.PointReference;
import org.docksweep.gate.ReferenceTeacher;
import org.docksweep.gate.SharedScatter;
import org.docksweep.gate.UnitScatter;
import org.docksweep.judge.PointJudgement;
import org.docksweep.judge.Prompt;
import org.docksweep.suspect.Explanation;
import org.docksweep.suspect.SuspectRanking;
import org.docksweep.sweep.FrequencyGrid;
import org.docksweep.sweep.ImpedanceCurve;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** Drafts of limits against a night of which every curve's probability of a fault is known from a second way to it. */
@ExtendWith(RunningService.class)
class LimitsTest {
    private static final double NOISE = 0.001;
    private static final long SEED = 60;
    /** A period of their own for each test, after the references and before nobody's. */
    private static final Instant NIGHTS = Instant.now().plus(Duration.ofDays(1)).truncatedTo(ChronoUnit.DAYS);

    private static int nights;

    private final Api api;
    private final String code = "LAGOON-" + House.next();
    private final ModelBook book = House.book(code);
    private final CabinetModel model = book.cabinetModels().get(0);
    private final Instant night = NIGHTS.plus(Duration.ofDays(nights++));
    private PointReference reference;

    LimitsTest(Api api) {
        this.api = api;
    }

    private ImpedanceCurve curve(String point, double seriesOhm, long seed) {
        TestPoint at = model.testPoint(point);
        CircuitFault fault = seriesOhm > 0
                ? new CircuitFault(
                        CircuitFault.Kind.SERIES_RESISTANCE, at.positionCodes().get(0))
                : CircuitFault.NONE;
        PointCircuit circuit = CircuitCompiler.compile(book, model, at, fault);
        Random random = new Random(seed);
        double[] x = circuit.nominal();
        for (int i = 0; i < x.length; i++) {
            x[i] += 0.5 * circuit.parameters().get(i).spread() * random.nextGaussian();
        }
        if (seriesOhm > 0) {
            x[circuit.indexOf("fault.series")] = Math.log(seriesOhm);
        }
        double[] grid = FrequencyGrid.within(20, 19_000);
        double[] re = new double[grid.length];
        double[] im = new double[grid.length];
        double[] uncertainty = new double[grid.length];
        for (int i = 0; i < grid.length; i++) {
            double[] z = circuit.impedanceOhm(grid[i], x);
            double size = Math.hypot(z[0], z[1]);
            re[i] = z[0] + NOISE * size * random.nextGaussian();
            im[i] = z[1] + NOISE * size * random.nextGaussian();
            uncertainty[i] = NOISE * size;
        }
        return new ImpedanceCurve(grid, re, im, uncertainty);
    }

    private PointReference taught(String point) {
        List<ReferenceTeacher.Unit> units = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            units.add(new ReferenceTeacher.Unit(curve(point, 0, SEED + i), null, 20.0));
        }
        return ReferenceTeacher.teach(book, code, point, units);
    }

    private Api.Answer teach() {
        Api.Answer answer =
                api.put(ApiPaths.LESSONS + "/" + code, new LessonBody(book, true, List.of(taught("LF"), taught("HF"))));
        reference = inForce("LF");
        return answer;
    }

    /** What a dock judges by: the model's reference, with what all references of the house say together. */
    private PointReference inForce(String point) {
        PointReference[] all = api.get(ApiPaths.REFERENCES).as(PointReference[].class);
        return SharedScatter.over(List.of(all)).stream()
                .filter(r ->
                        r.cabinetModelCode().equals(code) && r.testPointCode().equals(point))
                .findFirst()
                .orElseThrow();
    }

    private Explanation explained(ImpedanceCurve curve) {
        TestPoint point = model.testPoint("LF");
        Knowledge knowledge =
                Knowledge.nominal(book, model, point).taughtBy(reference).at(20.0);
        return new SuspectRanking(book, model, point, knowledge).explain(curve);
    }

    /** A curve whose probability of a fault lies between two values: more resistance, more probability. */
    private ImpedanceCurve between(double low, double high) {
        double from = 0.01;
        double to = 4;
        for (int step = 0; step < 60; step++) {
            double ohm = Math.sqrt(from * to);
            ImpedanceCurve curve = curve("LF", ohm, SEED + 99);
            double probability = explained(curve).faultProbability();
            if (probability >= low && probability <= high) {
                return curve;
            }
            from = probability < low ? ohm : from;
            to = probability < low ? to : ohm;
        }
        throw new AssertionError("no series resistance gives a probability from " + low + " to " + high);
    }

    private CheckInBody stored(ImpedanceCurve curve, Verdict verdict, int limitsVersion) {
        return stored(code, curve, verdict, limitsVersion);
    }

    private CheckInBody stored(String judgedAs, ImpedanceCurve curve, Verdict verdict, int limitsVersion) {
        AssetTag tag = House.newCabinet(api, judgedAs, CabinetStatus.OUT);
        JobCode job = verdict == Verdict.FAIL ? House.newCode() : null;
        List<MeasurementBody> measurements = verdict == null
                ? List.of()
                : List.of(new MeasurementBody(
                        UUID.randomUUID(),
                        night,
                        1,
                        null,
                        20.0,
                        new PointJudgement(
                                "LF",
                                verdict,
                                Prompt.NONE,
                                Reason.of("verdict-pass"),
                                curve,
                                null,
                                List.of(),
                                List.of(),
                                List.of())));
        CheckInBody body = new CheckInBody(
                UUID.randomUUID(),
                tag,
                judgedAs,
                null,
                "dock-1",
                "Ines Duna",
                night,
                night.plusSeconds(20),
                Set.of(),
                verdict,
                verdict == null ? Route.MANUAL_HOLD : verdict == Verdict.PASS ? Route.SHELF : Route.BENCH,
                false,
                Reason.of("verdict-pass"),
                verdict == Verdict.FAIL ? "LF" : null,
                List.of(),
                List.of(),
                job,
                verdict == null ? null : "2",
                limitsVersion,
                measurements);
        Api.Answer answer = House.put(api, body);
        assertThat(answer.status()).as("%s", answer).isEqualTo(201);
        return body;
    }

    private LimitRehearsal rehearse(LimitSet draft) {
        Api.Answer answer = api.post(
                ApiPaths.LIMIT_REHEARSALS, new LimitRehearsal.Order(draft, night, night.plus(Duration.ofHours(1))));
        assertThat(answer.status()).as("%s", answer).isEqualTo(200);
        return answer.as(LimitRehearsal.class);
    }

    private static LimitSet draft(double fail, double watch) {
        LimitSet now = LimitSet.initial();
        return new LimitSet(99, fail, fail, fail, watch, now.misfitLimit(), now.wayLevelLimitDb(), now.guardFactor());
    }

    @Test
    void saysWhatAStricterAndALooserDraftWouldHaveChanged() {
        assertThat(teach().status()).isEqualTo(201);
        ImpedanceCurve borderline = between(0.13, 0.19);
        ImpedanceCurve likely = between(0.6, 0.9);
        CheckInBody healthy = stored(curve("LF", 0, SEED + 30), Verdict.PASS, 1);
        CheckInBody near = stored(borderline, Verdict.PASS, 1);
        CheckInBody failed = stored(likely, Verdict.FAIL, 1);
        CheckInBody dead = stored(curve("LF", 6, SEED + 31), Verdict.FAIL, 1);

        LimitRehearsal stricter = rehearse(draft(0.12, 0.05));
        LimitRehearsal looser = rehearse(draft(0.95, 0.5));
        LimitRehearsal same = rehearse(draft(0.5, 0.1));

        // by hand: near lies from 0.13 to 0.19, above 0.12 and below 0.2; failed from 0.6 to 0.9, below 0.95
        assertThat(stricter.looked()).isEqualTo(4);
        assertThat(stricter.passToFail()).isEqualTo(1);
        assertThat(stricter.failToPass()).isZero();
        assertThat(stricter.unchanged()).isEqualTo(3);
        assertThat(stricter.changes()).singleElement().satisfies(c -> {
            assertThat(c.checkInId()).isEqualTo(near.id());
            assertThat(c.before()).isEqualTo(Verdict.PASS);
            assertThat(c.after()).isEqualTo(Verdict.FAIL);
            assertThat(c.watchBefore()).isTrue();
            assertThat(c.faultProbability()).isBetween(0.13, 0.19);
        });
        assertThat(looser.failToPass()).isEqualTo(1);
        assertThat(looser.watchRemoved()).isEqualTo(1);
        assertThat(looser.unchanged()).isEqualTo(2);
        assertThat(looser.changes())
                .extracting(LimitRehearsal.Change::checkInId, LimitRehearsal.Change::after)
                .containsExactlyInAnyOrder(
                        org.assertj.core.groups.Tuple.tuple(near.id(), Verdict.PASS),
                        org.assertj.core.groups.Tuple.tuple(failed.id(), Verdict.PASS));
        assertThat(same.changes()).isEmpty();
        assertThat(same.unchanged()).isEqualTo(4);
        assertThat(same.left()).isZero();
        assertThat(same.goOnFrom()).isNull();
        assertThat(List.of(healthy, dead))
                .allSatisfy(b -> assertThat(looser.changes())
                        .noneMatch(c -> c.checkInId().equals(b.id())));
    }

    @Test
    void refusesALessonThatWouldStopEveryDock() {
        PointReference good = taught("LF");
        PointReference.Taught taught = good.taught();
        double[][] impossible = Arrays.stream(taught.scatter().information())
                .map(double[]::clone)
                .toArray(double[][]::new);
        int last = impossible.length - 1;
        impossible[last][last] = -1e12;
        PointReference bad = new PointReference(
                good.cabinetModelCode(),
                good.testPointCode(),
                good.unitCount(),
                good.frequencyHz(),
                good.meanLogOhm(),
                good.meanPhaseRad(),
                good.spreadLog(),
                good.acousticFrequencyHz(),
                good.meanLevelDb(),
                good.spreadLevelDb(),
                new PointReference.Taught(
                        taught.parameterIds(),
                        taught.mean(),
                        taught.spread(),
                        taught.offsetLog(),
                        taught.offsetPhaseRad(),
                        taught.offsetSigma(),
                        new UnitScatter(
                                taught.scatter().tolerance(),
                                impossible,
                                taught.scatter().pulls())));

        Api.Answer answer =
                api.put(ApiPaths.LESSONS + "/" + code, new LessonBody(book, true, List.of(bad, taught("HF"))));

        assertThat(answer.status()).isEqualTo(400);
        assertThat(answer.toString()).contains("information must be positive");
        assertThat(api.get(ApiPaths.REFERENCES + "/" + code + "/LF").status()).isEqualTo(404);

        assertThat(teach().status()).isEqualTo(201);
        Api.Answer alone = api.put(ApiPaths.REFERENCES + "/" + code + "/LF", bad);

        assertThat(alone.status()).isEqualTo(400);
        assertThat(alone.toString()).contains("information must be positive");
        assertThat(api.get(ApiPaths.REFERENCES + "/" + code + "/LF").as(PointReference.class))
                .isEqualTo(good);
    }

    @Test
    void saysOfWhatItCanSayNothingAndWhy() {
        teach();
        String untaughtModel = House.newModel(api);
        CheckInBody untaught = stored(untaughtModel, curve("LF", 0, SEED + 32), Verdict.PASS, 1);
        CheckInBody other = stored(curve("LF", 6, SEED + 33), Verdict.PASS, 1);
        CheckInBody held = stored(null, null, 1);
        CheckInBody strange = stored(curve("LF", 0, SEED + 34), Verdict.PASS, 77);

        LimitRehearsal rehearsal = rehearse(draft(0.15, 0.05));

        assertThat(rehearsal.changes()).isEmpty();
        Map<UUID, LimitRehearsal.Why> why = rehearsal.notJudged().stream()
                .collect(java.util.stream.Collectors.toMap(
                        LimitRehearsal.NotJudged::checkInId, LimitRehearsal.NotJudged::why));
        assertThat(why)
                .containsEntry(other.id(), LimitRehearsal.Why.NOT_REPRODUCED)
                .containsEntry(held.id(), LimitRehearsal.Why.NOT_SWEPT)
                .containsEntry(strange.id(), LimitRehearsal.Why.LIMITS_NOT_KNOWN)
                .containsEntry(untaught.id(), LimitRehearsal.Why.NO_REFERENCE);
        Api.Answer csv = api.send(api.request(
                        ApiPaths.LIMIT_REHEARSALS, "Content-Type", "application/json", "Accept", "text/csv")
                .POST(java.net.http.HttpRequest.BodyPublishers.ofByteArray(Api.MAPPER.writeValueAsBytes(
                        new LimitRehearsal.Order(draft(0.15, 0.05), night, night.plusSeconds(3_600))))));
        assertThat(csv.status()).as("%s", csv).isEqualTo(200);
        assertThat(csv.text().lines().count())
                .isEqualTo(1 + rehearsal.notJudged().size());
        assertThat(csv.text()).contains("NOT_SWEPT: nothing was swept");
    }

    @Test
    void refusesAPeriodThatEndsBeforeItBegins() {
        Api.Answer answer = api.post(
                ApiPaths.LIMIT_REHEARSALS, new LimitRehearsal.Order(draft(0.5, 0.1), night, night.minusSeconds(1)));

        assertThat(answer.status()).isEqualTo(400);
        assertThat(answer.problem().detail()).contains("must be after from");
    }

    @Test
    void succeedsLimitsAndNeverChangesThem() {
        LimitSet now = api.get(ApiPaths.LIMITS).as(LimitSet.class);
        LimitSet next = new LimitSet(
                now.version() + 1, 0.5, 0.5, 0.2, 0.1, now.misfitLimit(), now.wayLevelLimitDb(), now.guardFactor());
        LimitSet other = new LimitSet(
                next.version(), 0.4, 0.4, 0.2, 0.1, now.misfitLimit(), now.wayLevelLimitDb(), now.guardFactor());

        assertThat(put(next).status()).isEqualTo(201);
        assertThat(put(next).status()).isEqualTo(200);
        Api.Answer changed = put(other);
        assertThat(changed.status()).isEqualTo(409);
        assertThat(changed.problem().type()).isEqualTo(ProblemTypes.WRONG_STATE);
        Api.Answer skipped = put(new LimitSet(next.version() + 5, 0.5, 0.5, 0.2, 0.1, 12, 6, 1.64));
        assertThat(skipped.status()).isEqualTo(409);
        assertThat(skipped.problem().detail()).contains("next version");
        assertThat(api.get(ApiPaths.LIMITS).as(LimitSet.class)).isEqualTo(next);
        assertThat(api.get(ApiPaths.LIMITS + "/" + now.version()).as(LimitSet.class))
                .isEqualTo(now);
    }

    /** Written before cabinets with a baseline had a limit of their own. */
    @Test
    void takesLimitsWithoutOneForBaselines() {
        LimitSet now = api.get(ApiPaths.LIMITS).as(LimitSet.class);
        int version = now.version() + 1;
        Map<String, Object> former = Map.of(
                "version",
                version,
                "failProbability",
                0.3,
                "watchProbability",
                0.1,
                "misfitLimit",
                now.misfitLimit(),
                "wayLevelLimitDb",
                now.wayLevelLimitDb(),
                "guardFactor",
                now.guardFactor());

        assertThat(api.put(ApiPaths.LIMITS + "/" + version, former).status()).isEqualTo(201);
        assertThat(api.get(ApiPaths.LIMITS).as(LimitSet.class).failProbability(true))
                .isEqualTo(0.3);
    }

    private Api.Answer put(LimitSet limits) {
        return api.put(ApiPaths.LIMITS + "/" + limits.version(), limits);
    }

    @Test
    void storesALessonAsAWholeOrNotAtAll() {
        PointReference low = taught("LF");
        Api.Answer half = api.put(ApiPaths.LESSONS + "/" + code, new LessonBody(book, true, List.of(low)));

        assertThat(half.status()).isEqualTo(400);
        assertThat(half.text()).contains("HF");
        assertThat(api.get(ApiPaths.MODEL_BOOK).as(ModelBook.class).cabinetModels())
                .noneMatch(m -> m.code().equals(code));

        Api.Answer whole = teach();
        assertThat(whole.status()).as("%s", whole).isEqualTo(201);
        assertThat(whole.listOf(TaughtPoint.class)).hasSize(2).allSatisfy(t -> {
            assertThat(t.unitCount()).isEqualTo(5);
            assertThat(t.taughtBy()).isNotBlank();
        });
        assertThat(teach().status()).isEqualTo(200);
        assertThat(api.get(ApiPaths.LESSONS).listOf(TaughtPoint.class))
                .filteredOn(t -> t.modelCode().equals(code))
                .hasSize(2);
    }

    @Test
    void refusesANewModelUnderACodeThatIsTaken() {
        teach();
        ModelBook other = new ModelBook(
                List.of(new CabinetModel(
                        code,
                        "another cabinet",
                        model.feed(),
                        model.widthMm(),
                        model.heightMm(),
                        model.massKg(),
                        model.positions(),
                        model.enclosures(),
                        model.testPoints())),
                book.driverModels());

        Api.Answer answer =
                api.put(ApiPaths.LESSONS + "/" + code, new LessonBody(other, true, List.of(reference, taught("HF"))));

        assertThat(answer.status()).isEqualTo(409);
        assertThat(answer.problem().detail()).contains(code, "already");
        assertThat(api.get(ApiPaths.MODEL_BOOK)
                        .as(ModelBook.class)
                        .cabinetModel(code)
                        .name())
                .isEqualTo(model.name());
    }
}
