package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.UUID;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.BenchActionBody;
import org.docksweep.contract.ImportReceipt;
import org.docksweep.contract.PartLife;
import org.docksweep.contract.PastPartLife;
import org.docksweep.contract.Problem;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.contract.ReliabilityReport;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.ConfirmedCause;
import org.docksweep.fleet.PartSource;
import org.docksweep.survival.WeibullAnswer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

@ExtendWith(RunningService.class)
class ReliabilityTest {
    private static final LocalDate FIRST_DAY = LocalDate.of(2019, 1, 7);
    private static final int WEEKS = 260;

    private final Api api;
    private final OwnDrivers drivers;
    private final AssetTag tag;

    ReliabilityTest(Api api) {
        this.api = api;
        this.drivers = OwnDrivers.register(api);
        this.tag = drivers.newCabinet(api);
    }

    private Api.Answer post(List<PastPartLife> lives) {
        return api.post(ApiPaths.PAST_PART_LIVES, lives);
    }

    private ReliabilityReport.DriverRow report() {
        Api.Answer answer = api.get(ApiPaths.RELIABILITY + "?driverModel=" + drivers.horn());
        assertThat(answer.status()).as("%s", answer).isEqualTo(200);
        ReliabilityReport report = answer.as(ReliabilityReport.class);
        assertThat(report.drivers()).hasSize(1);
        return report.drivers().get(0);
    }

    private PastPartLife failed(PartSource source, int fittedWeek, int lastPassWeek, int foundWeek) {
        return life(source, fittedWeek, lastPassWeek, foundWeek, ConfirmedCause.LEAD_IN_JOINT);
    }

    private PastPartLife working(PartSource source, int fittedWeek, int lastPassWeek) {
        return life(source, fittedWeek, lastPassWeek, null, null);
    }

    private PastPartLife life(
            PartSource source, int fittedWeek, Integer lastPassWeek, Integer foundWeek, ConfirmedCause cause) {
        return new PastPartLife(
                new PartLife(
                        UUID.randomUUID(),
                        tag,
                        "HF",
                        drivers.horn(),
                        null,
                        "K-1",
                        null,
                        source,
                        FIRST_DAY.plusWeeks(fittedWeek),
                        foundWeek == null ? null : week(foundWeek),
                        foundWeek != null,
                        cause,
                        null,
                        null,
                        lastPassWeek == null ? null : week(lastPassWeek),
                        10,
                        4_000),
                null);
    }

    private static Instant week(int week) {
        return FIRST_DAY.plusWeeks(week).atStartOfDay().plusHours(12).toInstant(ZoneOffset.UTC);
    }

    /** Five years of one position after another: Weibull lives with shape 1.6, found at returns every four weeks. */
    private List<PastPartLife> fiveYears(PartSource source, double scale, int positions, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<PastPartLife> lives = new ArrayList<>();
        for (int i = 0; i < positions; i++) {
            int fitted = random.nextInt(20);
            while (fitted < WEEKS) {
                double end = fitted + scale * Math.pow(-Math.log(1 - random.nextDouble()), 1 / 1.6);
                int found = (int) Math.ceil((end - fitted) / 4) * 4 + fitted;
                if (found > WEEKS) {
                    lives.add(working(source, fitted, WEEKS - (WEEKS - fitted) % 4));
                    break;
                }
                lives.add(failed(source, fitted, found - 4, found));
                fitted = found;
            }
        }
        return lives;
    }

    @Test
    void findsTheTruthOfFiveYearsAndTheBetterPart() {
        // One house in twenty misses the truth, and this is one house: how often is the matter of RecoveryStudyTest.
        List<PastPartLife> lives = fiveYears(PartSource.ORIGINAL, 180, 40, 10);
        lives.addAll(fiveYears(PartSource.AFTERMARKET, 90, 25, 12));
        assertThat(post(lives).as(ImportReceipt.class)).isEqualTo(new ImportReceipt(lives.size(), lives.size(), 0));

        ReliabilityReport.DriverRow row = report();

        long failures = lives.stream().filter(l -> l.life().failed()).count();
        assertThat((long) row.all().failures()).isEqualTo(failures);
        // And the one that sits in the cabinet, of which nothing is known yet.
        assertThat(row.all().parts()).isEqualTo(lives.size() + 1);
        assertThat(row.groups())
                .extracting(ReliabilityReport.Group::source)
                .containsExactly(PartSource.ORIGINAL, PartSource.AFTERMARKET);
        ReliabilityReport.Weibull original = row.groups().get(0).weibull();
        assertThat(1.6).isBetween(original.shapeLower(), original.shapeUpper());
        assertThat(180.0).isBetween(original.scaleLower(), original.scaleUpper());
        ReliabilityReport.Weibull other = row.groups().get(1).weibull();
        assertThat(90.0).isBetween(other.scaleLower(), other.scaleUpper());
        assertThat(row.comparison().outcome()).isEqualTo(ReliabilityReport.Outcome.ORIGINAL_LASTS_LONGER);
        assertThat(row.comparison().ratioLower()).isGreaterThan(1);
        assertThat(row.words())
                .extracting(r -> r.key())
                .contains("reliability-tenth", "reliability-wears", "reliability-compare-original");
        assertThat(row.causes()).singleElement().satisfies(c -> {
            assertThat(c.cause()).isEqualTo(ConfirmedCause.LEAD_IN_JOINT);
            assertThat((long) c.failures()).isEqualTo(failures);
        });
        // 40.00 a part, ten returns a part.
        assertThat(row.all().costPerThousandReturnsCents())
                .isCloseTo(4_000.0 * failures * 1000 / (10.0 * lives.size()), org.assertj.core.data.Offset.offset(1.0));
    }

    @Test
    void givesTheSameFiguresAsTableAndAsSheet() {
        post(fiveYears(PartSource.ORIGINAL, 120, 10, 5));

        String path = ApiPaths.RELIABILITY + "?driverModel=" + drivers.horn();
        String csv = api.get(path, "Accept", "text/csv").text();
        Api.Answer pdf = api.get(path, "Accept", "application/pdf");

        List<ReliabilityReport.Point> curve = report().all().curve();
        List<String> lines = csv.lines().toList();
        assertThat(lines.get(0)).isEqualTo("driverModel,source,weeks,atRisk,failures,survival,lower,upper");
        assertThat(lines.stream().filter(l -> l.startsWith('"' + drivers.horn() + "\",ALL,")))
                .hasSameSizeAs(curve);
        assertThat(lines.get(1))
                .startsWith(String.format(
                        java.util.Locale.ROOT,
                        "\"%s\",ALL,%.2f,%d,%d,",
                        drivers.horn(),
                        curve.get(0).weeks(),
                        curve.get(0).atRisk(),
                        curve.get(0).failures()));
        assertThat(pdf.status()).isEqualTo(200);
        assertThat(new String(pdf.response().body(), 0, 5, StandardCharsets.ISO_8859_1))
                .isEqualTo("%PDF-");
    }

    @Test
    void saysThatThreeFailuresAreTooFew() {
        post(List.of(
                failed(PartSource.ORIGINAL, 0, 8, 12),
                failed(PartSource.ORIGINAL, 12, 20, 24),
                failed(PartSource.AFTERMARKET, 24, 60, 64),
                working(PartSource.ORIGINAL, 64, 200)));

        ReliabilityReport.DriverRow row = report();

        assertThat(row.all().weibull()).isNull();
        assertThat(row.all().noWeibull()).isEqualTo(WeibullAnswer.Why.TOO_FEW_FAILURES);
        assertThat(row.words().get(0).key()).isEqualTo("reliability-too-few");
        assertThat(row.comparison().outcome()).isEqualTo(ReliabilityReport.Outcome.TOO_FEW);
        // By hand: watched 12 + 12 + 40 + 136 weeks.
        assertThat(row.all().partWeeks()).isEqualTo(200);
        assertThat(row.all().failuresPerThousandWeeks()).isEqualTo(15);
    }

    @Test
    void pointsOutFailuresThatSmellOfTheFitting() {
        List<PastPartLife> lives = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            lives.add(failed(PartSource.ORIGINAL, 10 * i, 10 * i, 10 * i + 3));
            lives.add(failed(PartSource.ORIGINAL, i, 100 + 9 * i, 104 + 9 * i));
        }
        post(lives);

        ReliabilityReport.DriverRow row = report();

        assertThat(row.all().earlyFailures()).isEqualTo(6);
        assertThat(row.words()).extracting(r -> r.key()).contains("reliability-early");
    }

    /** A part fitted before the records began must not make its kind look immortal: it counts from then on only. */
    @Test
    void countsAnOldPartOnlyFromWhereTheRecordsBegin() {
        PastPartLife old = working(PartSource.ORIGINAL, 0, 150);
        post(List.of(
                new PastPartLife(old.life(), FIRST_DAY.plusWeeks(100)), failed(PartSource.ORIGINAL, 100, 120, 124)));

        ReliabilityReport.Group all = report().all();

        assertThat(all.partWeeks()).isEqualTo(50 + 24);
        // The failure at 24 weeks with one at risk; the old part then carries the curve to its last good return.
        assertThat(all.curve()).extracting(ReliabilityReport.Point::weeks).containsExactly(24.0, 150.0);
        assertThat(all.curve().get(0).atRisk()).isEqualTo(1);
    }

    @Test
    void countsWhatTheBenchTookOut() {
        BenchDesk desk = BenchDesk.withJob(api);
        desk.receive(desk.diaphragm, 1, "N" + desk.tag);
        ReliabilityReport.Group before = horns();
        desk.act(BenchActionBody.Verb.ACCEPT, BenchActionBody.Verb.START_REPAIR);
        BenchDesk.expect(201, desk.find(ConfirmedCause.COIL_BURNT));
        BenchDesk.expect(201, desk.exchange(desk.newDiaphragm(desk.diaphragm, "D" + desk.tag, "N" + desk.tag)));

        ReliabilityReport.Group after = horns();

        assertThat(after.failures() - before.failures()).isEqualTo(1);
        assertThat(after.parts() - before.parts()).isEqualTo(1);
        assertThat(after.inService()).isEqualTo(before.inService());
    }

    private ReliabilityReport.Group horns() {
        return api.get(ApiPaths.RELIABILITY + "?driverModel=REED-1")
                .as(ReliabilityReport.class)
                .drivers()
                .get(0)
                .all();
    }

    @Test
    void takesALifeOnceAndRefusesAnotherUnderItsId() {
        PastPartLife life = failed(PartSource.ORIGINAL, 0, 8, 12);
        PastPartLife other = new PastPartLife(life.life(), FIRST_DAY);

        assertThat(post(List.of(life)).as(ImportReceipt.class)).isEqualTo(new ImportReceipt(1, 1, 0));
        assertThat(post(List.of(life)).as(ImportReceipt.class)).isEqualTo(new ImportReceipt(1, 0, 1));
        assertThat(post(List.of(other)).problem().type()).isEqualTo(ProblemTypes.ID_REUSED);
    }

    @Test
    void storesNothingWhenOneLifeIsWrongAndNamesEveryError() {
        PastPartLife good = failed(PartSource.ORIGINAL, 0, 8, 12);
        PastPartLife backwards = failed(PartSource.ORIGINAL, 30, 8, 12);
        PastPartLife unknown = new PastPartLife(
                new PartLife(
                        UUID.randomUUID(),
                        tag,
                        "HF",
                        "NO-SUCH-DRIVER",
                        null,
                        null,
                        null,
                        null,
                        FIRST_DAY,
                        null,
                        true,
                        null,
                        null,
                        null,
                        null,
                        -1,
                        null),
                null);

        Problem problem = post(List.of(good, backwards, unknown)).problem();

        assertThat(problem.status()).isEqualTo(400);
        assertThat(problem.errors())
                .extracting(Problem.Entry::column)
                .contains("[1].life.endedAt", "[1].life.lastPassAt", "[2].life.endedAt", "[2].life.returnCount");
        assertThat(report().all().parts())
                .as("the one that sits in the cabinet")
                .isEqualTo(1);
        assertThat(report().all().failures()).isZero();
    }

    @Test
    void refusesADriverModelNobodyKnows() {
        Problem problem =
                api.get(ApiPaths.RELIABILITY + "?driverModel=NO-SUCH-DRIVER").problem();

        assertThat(problem.status()).isEqualTo(404);
        assertThat(problem.detail()).contains("NO-SUCH-DRIVER");
    }
}
