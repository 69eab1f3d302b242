package org.docksweep.service;

import java.net.http.HttpRequest;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.UUID;
import javax.sql.DataSource;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.Dispatch;
import org.docksweep.contract.MeasurementBody;
import org.docksweep.contract.OrderedId;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Route;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.Reading;
import org.docksweep.gate.ReadingKind;
import org.docksweep.gate.ReadingState;
import org.docksweep.judge.PointJudgement;
import org.docksweep.service.retention.CurvePartitions;
import org.docksweep.service.store.StoredJson;

/**
 * Builds a large fleet: cabinets by the CSV import a house would use, their past by plain inserts of the rows a check-in
 * leaves, since a million check-ins through HTTP would say nothing more. Curves are short (4 points): the size of curves
 * is a matter of the disk, lists never read them.
 */
final class LargeHouse {
    static final String MODEL = "TERN-L";
    private static final int MEASUREMENTS_PER_CHECK_IN = 4;
    private static final int ROWS_AT_ONCE = 2_000;
    private static final int DAYS = 3 * 365;
    private static final Duration IMPORT_PATIENCE = Duration.ofMinutes(15);
    private static final long SEED = 20_260_314;

    private LargeHouse() {}

    static AssetTag tag(int number) {
        return new AssetTag(String.format("MCH-%06d", number));
    }

    /** Imports cabinets over HTTP; returns how long it took, in seconds. */
    static double importCabinets(Api api, int count) {
        expect(201, api.put(ApiPaths.MODEL_BOOK, House.book(MODEL)));
        StringBuilder csv = new StringBuilder("tag,model,shelf_place,status\n");
        for (int i = 1; i <= count; i++) {
            csv.append(tag(i))
                    .append(',')
                    .append(MODEL)
                    .append(",S-")
                    .append(i / 100)
                    .append(i % 3 == 0 ? ",OUT\n" : ",READY\n");
        }
        long begun = System.nanoTime();
        expect(
                200,
                api.send(api.request(ApiPaths.CABINETS_IMPORT, "Content-Type", "text/csv;charset=UTF-8")
                        .timeout(IMPORT_PATIENCE)
                        .POST(HttpRequest.BodyPublishers.ofString(csv.toString()))));
        double seconds = (System.nanoTime() - begun) / 1e9;
        for (int i = 0; i < 50; i++) {
            LocalDate day = LocalDate.now(ZoneOffset.UTC).plusDays(i);
            Dispatch dispatch = new Dispatch(
                    OrderedId.next(),
                    "D-" + i,
                    "Harbour Players",
                    day,
                    day.plusDays(3),
                    List.of(new Dispatch.Line(MODEL, 400)));
            expect(201, api.put(ApiPaths.DISPATCHES + "/" + dispatch.id(), dispatch));
        }
        return seconds;
    }

    private static void expect(int status, Api.Answer answer) {
        if (answer.status() != status) {
            throw new IllegalStateException("expected " + status + ", but got " + answer);
        }
    }

    /**
     * Inserts the past: the check-ins of one cabinet after the other, over three years up to now. Keys count up, so that
     * the trees of the database grow at their end; what is measured afterwards comes with random keys.
     *
     * @return seconds
     */
    static double insertPast(DataSource database, int cabinets, int measurements) throws SQLException {
        long begun = System.nanoTime();
        SplittableRandom random = new SplittableRandom(SEED);
        int checkIns = measurements / MEASUREMENTS_PER_CHECK_IN;
        Instant start = Instant.now().minusSeconds(DAYS * 86_400L);
        List<CheckInBody> samples = samples(random);
        try (Connection connection = database.getConnection();
                RawCheckIn raw = new RawCheckIn(connection)) {
            connection.setAutoCommit(false);
            checkReferences(connection, false);
            CurvePartitions.ensure(
                    connection, YearMonth.from(start.atOffset(ZoneOffset.UTC)), YearMonth.now(ZoneOffset.UTC));
            for (int i = 0; i < checkIns; i++) {
                AssetTag tag = tag(1 + (int) ((long) i * cabinets / checkIns));
                Instant at = start.plusSeconds(random.nextInt(DAYS * 86_400));
                CheckInBody sample = samples.get(random.nextInt(samples.size()));
                raw.add(sample, tag, at, new UUID(SEED, (long) i << 8), MEASUREMENTS_PER_CHECK_IN);
                if (i % ROWS_AT_ONCE == 0) {
                    raw.flush();
                    connection.commit();
                }
            }
            raw.flush();
            connection.commit();
            checkReferences(connection, true);
        }
        return (System.nanoTime() - begun) / 1e9;
    }

    /** Millions of rows whose references are right because of how they are made. */
    private static void checkReferences(Connection connection, boolean check) throws SQLException {
        boolean h2 = "H2".equals(connection.getMetaData().getDatabaseProductName());
        try (Statement statement = connection.createStatement()) {
            statement.execute(
                    h2
                            ? "set referential_integrity " + check
                            : "set session_replication_role = " + (check ? "origin" : "replica"));
            if (check && !h2) {
                connection.commit();
                connection.setAutoCommit(true);
                statement.execute("vacuum (analyze)");
            } else if (check) {
                statement.execute("analyze");
            }
        }
    }

    /** One in 25 was held. */
    private static List<CheckInBody> samples(SplittableRandom random) {
        List<CheckInBody> samples = new ArrayList<>();
        for (int i = 0; i < 24; i++) {
            samples.add(pass(tag(1), random));
        }
        samples.add(House.checkIn(tag(1), MODEL, null, Verdict.SWEEP_AGAIN, Route.MANUAL_HOLD, null));
        return samples;
    }

    /** A good cabinet with a reading that is followed of each driver. */
    static CheckInBody pass(AssetTag tag, SplittableRandom random) {
        CheckInBody plain = House.pass(tag, MODEL);
        List<MeasurementBody> measurements = plain.measurements().stream()
                .map(m -> new MeasurementBody(
                        m.id(), m.takenAt(), m.attempt(), m.recordingSha256(), m.ambientCelsius(), read(m, random)))
                .toList();
        return new CheckInBody(
                plain.id(),
                plain.tag(),
                plain.modelCode(),
                plain.returnListId(),
                plain.kioskId(),
                plain.operator(),
                plain.startedAt(),
                plain.finishedAt(),
                plain.visualDamage(),
                plain.verdict(),
                plain.route(),
                plain.watch(),
                plain.reason(),
                plain.faultPositionCode(),
                plain.positions(),
                plain.suspects(),
                plain.jobCode(),
                plain.judgeVersion(),
                plain.limitsVersion(),
                measurements);
    }

    private static PointJudgement read(MeasurementBody measurement, SplittableRandom random) {
        PointJudgement judged = measurement.judgement();
        String point = judged.testPointCode();
        return new PointJudgement(
                point,
                judged.verdict(),
                judged.prompt(),
                judged.reason(),
                judged.impedance(),
                judged.acoustic(),
                List.of(reading(ReadingKind.DC_RESISTANCE_20C, point, 5.6 * (1 + 0.01 * random.nextDouble()))),
                judged.findings(),
                judged.suspects());
    }

    private static Reading reading(ReadingKind kind, String point, double value) {
        return new Reading(kind, point, point, value, 0.005 * value, null, 0.8 * value, 1.2 * value, ReadingState.OK);
    }

    /** The rows one check-in leaves, by plain statements: what the service adds to them is what it costs. */
    static final class RawCheckIn implements AutoCloseable {
        private final PreparedStatement checkIn;
        private final PreparedStatement position;
        private final PreparedStatement measurement;
        private final PreparedStatement curve;
        private final PreparedStatement event;
        private final PreparedStatement reading;
        private final PreparedStatement due;
        private final PreparedStatement cabinet;
        private final PreparedStatement audit;
        private final Map<UUID, String> texts = new HashMap<>();

        RawCheckIn(Connection connection) throws SQLException {
            checkIn = connection.prepareStatement("insert into check_in (id, tag, model_code, kiosk_id, operator,"
                    + " started_at, finished_at, received_at, visual_damage_json, verdict, route, watch, reason_json,"
                    + " suspects_json, judge_version, limits_version, body_sha256, status_after, joined_open_job)"
                    + " values (?, ?, ?, ?, ?, ?, ?, ?, '[]', ?, ?, false, ?, '[]', '1', 1, ?, 'READY', false)");
            position = connection.prepareStatement("insert into check_in_position (check_in_id, line_number,"
                    + " position_code, driver_model_code, state, word_json) values (?, ?, ?, ?, 'OK', ?)");
            measurement = connection.prepareStatement("insert into measurement (id, check_in_id, line_number, taken_at,"
                    + " attempt, recording_sha256, ambient_celsius, test_point_code, verdict)"
                    + " values (?, ?, ?, ?, 1, ?, 11.5, ?, ?)");
            curve = connection.prepareStatement(
                    "insert into measurement_curve (measurement_id, stored_on, judgement_json) values (?, ?, ?)");
            event = connection.prepareStatement(
                    "insert into history_event (id, tag, position_code, happened_at, done_by,"
                            + " kind, text_key, text_arguments_json) values (?, ?, ?, ?, ?, 'CHECKED_IN', 'verdict-pass', '[]')");
            reading = connection.prepareStatement(
                    "insert into trend_reading (measurement_id, line_number, tag, model_code, test_point_code, owner,"
                            + " kind, taken_at, reading_value) values (?, ?, ?, ?, ?, ?, ?, ?, ?)");
            due = connection.prepareStatement("insert into trend_due (check_in_id, tag) values (?, ?)");
            cabinet = connection.prepareStatement(
                    "update cabinet set status = 'READY', version = version + 1 where tag = ?");
            audit = connection.prepareStatement("insert into audit_entry (at, done_by, action, target, outcome,"
                    + " request_id) values (?, 'bootstrap', 'PUT', ?, 'STORED', ?)");
        }

        /** All that a check-in sent now leaves: the line of the log, the cabinet's status and what is due, too. */
        void addAsSent(CheckInBody body) throws SQLException {
            Instant now = Instant.now();
            add(body, body.tag(), now, body.id(), body.measurements().size());
            batch(due, body.id(), body.tag().value());
            batch(cabinet, body.tag().value());
            batch(
                    audit,
                    StoredJson.cut(now).atOffset(ZoneOffset.UTC),
                    ApiPaths.CHECK_INS + "/" + body.id(),
                    UUID.randomUUID().toString());
        }

        void add(CheckInBody body, AssetTag tag, Instant at, UUID id, int measurements) throws SQLException {
            OffsetDateTime time = StoredJson.cut(at).atOffset(ZoneOffset.UTC);
            String sha256 = "ab".repeat(32);
            String reason = StoredJson.write(body.reason());
            Object[] head = {
                id,
                tag.value(),
                body.modelCode(),
                body.kioskId(),
                body.operator(),
                time,
                time,
                time,
                body.verdict().name(),
                body.route().name(),
                reason,
                sha256
            };
            batch(checkIn, head);
            for (int i = 0; i < body.positions().size(); i++) {
                String code = body.positions().get(i).positionCode();
                batch(position, id, i, code, code.equals("LF") ? "DUNE-12" : "REED-1", reason);
            }
            for (int i = 0; i < measurements; i++) {
                MeasurementBody sample =
                        body.measurements().get(i % body.measurements().size());
                UUID measurementId = id.equals(body.id()) ? sample.id() : child(id, 1 + i);
                batch(
                        measurement,
                        measurementId,
                        id,
                        i,
                        time,
                        sha256,
                        sample.judgement().testPointCode(),
                        sample.judgement().verdict().name());
                batch(curve, measurementId, time.toLocalDate(), json(sample));
                for (int j = 0; j < sample.judgement().readings().size(); j++) {
                    Reading read = sample.judgement().readings().get(j);
                    batch(
                            reading,
                            measurementId,
                            j,
                            tag.value(),
                            body.modelCode(),
                            sample.judgement().testPointCode(),
                            read.positionCode(),
                            read.kind().name(),
                            time,
                            read.value());
                }
            }
            for (int i = 0; i <= body.positions().size(); i++) {
                String code = i == 0 ? null : body.positions().get(i - 1).positionCode();
                UUID eventId = id.equals(body.id()) ? OrderedId.next() : child(id, 100 + i);
                batch(event, eventId, tag.value(), code, time, body.operator());
            }
        }

        private static UUID child(UUID id, int number) {
            return new UUID(id.getMostSignificantBits(), id.getLeastSignificantBits() + number);
        }

        private static void batch(PreparedStatement statement, Object... values) throws SQLException {
            for (int i = 0; i < values.length; i++) {
                statement.setObject(i + 1, values[i]);
            }
            statement.addBatch();
        }

        /** Samples of the past are written again and again. */
        private String json(MeasurementBody measurement) {
            return texts.computeIfAbsent(measurement.id(), id -> StoredJson.write(measurement.judgement()));
        }

        private List<PreparedStatement> all() {
            return List.of(checkIn, position, measurement, curve, reading, event, due, cabinet, audit);
        }

        void flush() throws SQLException {
            for (PreparedStatement statement : all()) {
                statement.executeBatch();
            }
        }

        @Override
        public void close() throws SQLException {
            for (PreparedStatement statement : all()) {
                statement.close();
            }
        }
    }
}
