package org.docksweep.paper;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.contract.InstalledDriver;
import org.docksweep.contract.MeasurementBody;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.PartSource;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Route;
import org.docksweep.fleet.Verdict;
import org.docksweep.fleet.VisualItem;
import org.docksweep.gate.Finding;
import org.docksweep.gate.PointReference;
import org.docksweep.gate.Reading;
import org.docksweep.gate.ReadingKind;
import org.docksweep.gate.ReadingState;
import org.docksweep.judge.PointJudgement;
import org.docksweep.judge.PositionState;
import org.docksweep.judge.Prompt;
import org.docksweep.suspect.FaultKind;
import org.docksweep.suspect.Suspect;
import org.docksweep.sweep.ImpedanceCurve;

/** Builds the tag of an invented cabinet whose horn driver is open; a test changes only what matters to it. */
final class SampleTag {
    static final PaperContext ENGLISH = new PaperContext(
            "Marram Coast Hire",
            ZoneId.of("Europe/London"),
            Locale.UK,
            "Ines Calloway",
            Instant.parse("2025-10-18T01:14:00Z"),
            "0.1.0");
    static final PaperContext GERMAN = new PaperContext(
            "Marram Coast Hire",
            ZoneId.of("Europe/Berlin"),
            Locale.GERMANY,
            "Ines Calloway",
            Instant.parse("2025-10-18T01:14:00Z"),
            "0.1.0");

    private static final String PERSON = "Ines Calloway";
    private static final Instant SCANNED = Instant.parse("2025-10-18T01:11:20Z");

    private AssetTag tag = new AssetTag("MCH-000123");
    private CabinetModel model = SampleModels.TIDE_12;
    private String faultPosition = "HF";
    private JobCode job = new JobCode("J01-00042");
    private Reason reason = words("The horn driver is open: its branch is bare network between 1.9 and 8 kHz.");
    private List<Suspect> suspects = suspects(2);
    private List<HistoryEvent> events = events(tag, "HF");
    private List<MeasurementBody> measurements = List.of(measurement(1, SampleCurves.hornOpen(), hornReadings()));
    private List<PointReference> references = List.of(SampleCurves.reference());
    private LocalDate needOn = LocalDate.of(2025, 10, 23);
    private Verdict verdict = Verdict.FAIL;
    private Set<VisualItem> damage = EnumSet.of(VisualItem.GRILLE);

    static Reason words(String words) {
        return Reason.of("paper-words", words);
    }

    SampleTag tag(String value) {
        tag = new AssetTag(value);
        return this;
    }

    SampleTag model(CabinetModel changed, String positionAtFault) {
        model = changed;
        faultPosition = positionAtFault;
        return this;
    }

    SampleTag withoutPositionAtFault() {
        faultPosition = null;
        return this;
    }

    SampleTag withoutJob() {
        job = null;
        return this;
    }

    SampleTag withoutNeedDate() {
        needOn = null;
        return this;
    }

    SampleTag reason(String words) {
        reason = words(words);
        return this;
    }

    SampleTag suspects(List<Suspect> changed) {
        suspects = changed;
        return this;
    }

    SampleTag events(List<HistoryEvent> changed) {
        events = changed;
        return this;
    }

    SampleTag measurements(List<MeasurementBody> changed) {
        measurements = changed;
        return this;
    }

    SampleTag references(List<PointReference> changed) {
        references = changed;
        return this;
    }

    SampleTag notSwept() {
        verdict = null;
        measurements = List.of();
        return this;
    }

    SampleTag damage(Set<VisualItem> changed) {
        damage = changed;
        return this;
    }

    RepairTagContent build() {
        List<InstalledDriver> drivers = model.positions().stream()
                .map(p -> new InstalledDriver(
                        p.code(),
                        p.driverModelCode(),
                        "S" + p.code() + "-20417",
                        p.code().equals("HF") ? "D-88231" : null,
                        p.code().equals("HF") ? PartSource.ORIGINAL : PartSource.AFTERMARKET,
                        LocalDate.of(2024, 3, 9)))
                .toList();
        CabinetBody cabinet = new CabinetBody(tag, model.code(), "C-04", CabinetStatus.BENCH, false, drivers);
        CheckInBody checkIn = new CheckInBody(
                UUID.fromString("0f5a2a5e-5d54-4f0e-9d0a-3f5d7e0a1b01"),
                tag,
                model.code(),
                null,
                "dock-1",
                PERSON,
                SCANNED,
                SCANNED.plusSeconds(55),
                damage,
                verdict,
                Route.BENCH,
                false,
                reason,
                faultPosition,
                positions(),
                suspects,
                job,
                verdict == null ? null : "1",
                1,
                measurements);
        return new RepairTagContent(checkIn, cabinet, SampleModels.BOOK, references, events, needOn);
    }

    /** Everything long at once: what a tag must still hold. */
    static SampleTag crowded() {
        String sentence = "The second low driver of this cabinet is open: the dead cone moves as a passive radiator, "
                + "resistance and inductance have doubled, and a third peak stands between the two of the box, "
                + "which no healthy unit of this model has ever shown at any temperature";
        String step =
                "Take the grille off, look at the lead-ins of both drivers, measure the resistance at each driver "
                        + "itself with the other one disconnected, then at the connector plate";
        List<Suspect> suspects = suspects(3).stream()
                .map(s -> new Suspect(s.kind(), "IN", "LF2", null, s.probability(), words(sentence), words(step)))
                .toList();
        List<HistoryEvent> events = events(new AssetTag("WWWWW-88888888"), "LF2").stream()
                .map(e -> new HistoryEvent(
                        e.id(),
                        e.tag(),
                        e.positionCode(),
                        e.at(),
                        "Wilhelmina Featherstonehaugh",
                        e.kind(),
                        words(step)))
                .toList();
        List<Reading> readings = new ArrayList<>();
        for (ReadingKind kind : ReadingKind.values()) {
            readings.add(new Reading(kind, "IN", "LF2", -1234.5, 0.1, 9876.5, -1234.5, 9876.5, ReadingState.FAULT));
            readings.add(new Reading(kind, "IN", "LF1", 1e9, 0.1, null, null, 8000.0, ReadingState.NOT_JUDGED));
        }
        return new SampleTag()
                .tag("WWWWW-88888888")
                .model(SampleModels.BREAKER_215, "LF2")
                .reason(sentence)
                .suspects(suspects)
                .events(events)
                .damage(EnumSet.allOf(VisualItem.class))
                .measurements(List.of(measurement(3, SampleCurves.hornOpen(), readings)));
    }

    /** A powered cabinet: only the microphone saw it. */
    static SampleTag powered() {
        PointJudgement judgement = new PointJudgement(
                "LINE",
                Verdict.FAIL,
                Prompt.NONE,
                words("weak"),
                null,
                SampleCurves.microphone(18),
                List.of(new Reading(
                        ReadingKind.WAY_LEVEL, "LINE", "HF", -18.1, 0.4, 0.0, -6.0, null, ReadingState.FAULT)),
                List.of(new Finding(ReadingState.FAULT, "LINE", null, "HF", 2000.0, 20_000.0, words("way weak"))),
                List.of());
        return new SampleTag()
                .model(SampleModels.SKIFF_P, "HF")
                .reason("The horn is 18 dB down at the microphone.")
                .references(List.of(SampleCurves.microphoneReference()))
                .measurements(List.of(new MeasurementBody(new UUID(4, 9), SCANNED, 1, null, null, judgement)));
    }

    /** Sent to the bench by the eye alone: nothing swept, nothing known. */
    static SampleTag bare() {
        return new SampleTag()
                .notSwept()
                .withoutPositionAtFault()
                .withoutNeedDate()
                .suspects(List.of())
                .events(List.of())
                .reason("Connectors bent: not swept.")
                .damage(EnumSet.of(VisualItem.CONNECTORS));
    }

    private List<PositionState> positions() {
        return model.positions().stream()
                .map(p -> p.code().equals(faultPosition)
                        ? new PositionState(p.code(), ReadingState.FAULT, words("open"), null)
                        : new PositionState(
                                p.code(),
                                verdict == null ? ReadingState.NOT_JUDGED : ReadingState.OK,
                                words("ok"),
                                verdict == null ? null : "5.6 \u03a9"))
                .toList();
    }

    static MeasurementBody measurement(int attempt, ImpedanceCurve curve, List<Reading> readings) {
        Finding finding =
                new Finding(ReadingState.FAULT, "IN", null, "HF", 1900.0, 8000.0, words("branch is bare network"));
        return new MeasurementBody(
                new UUID(4, attempt),
                SCANNED,
                attempt,
                null,
                11.5,
                new PointJudgement(
                        "IN",
                        Verdict.FAIL,
                        Prompt.NONE,
                        words("open"),
                        curve,
                        null,
                        readings,
                        List.of(finding),
                        List.of()));
    }

    static List<Reading> hornReadings() {
        return List.of(
                new Reading(ReadingKind.DC_RESISTANCE_20C, "IN", "LF", 5.62, 0.04, 5.6, 5.1, 6.2, ReadingState.OK),
                new Reading(ReadingKind.TUNING, "IN", "LF", 52.3, 0.4, 52.0, 47.0, 57.0, ReadingState.OK),
                new Reading(ReadingKind.PEAK_FREQUENCY, "IN", "LF", 83.1, 0.6, 82.0, 70.0, 95.0, ReadingState.WATCH),
                new Reading(ReadingKind.MINIMUM, "IN", null, 0.61, 0.03, 5.9, 5.2, null, ReadingState.FAULT),
                new Reading(ReadingKind.IMPEDANCE_DEVIATION, "IN", "HF", 21.4, 0.3, 0.0, null, 1.5, ReadingState.FAULT),
                new Reading(ReadingKind.WAY_LEVEL, "IN", "HF", -38.2, 0.5, null, null, null, ReadingState.NOT_JUDGED));
    }

    static List<Suspect> suspects(int count) {
        List<Suspect> all = List.of(
                new Suspect(
                        FaultKind.DRIVER_OPEN,
                        "IN",
                        "HF",
                        null,
                        0.81,
                        words("no current above 1.9 kHz"),
                        words("Measure the resistance at the driver itself; look at the lead-in joint first.")),
                new Suspect(
                        FaultKind.PART_OPEN,
                        "IN",
                        null,
                        "C2",
                        0.16,
                        words("branch open"),
                        words("Bridge C2 and sweep again.")),
                new Suspect(
                        FaultKind.CONTACT_RESISTANCE,
                        "IN",
                        "HF",
                        null,
                        0.03,
                        words("loose"),
                        words("Pull at the spades of the horn driver.")));
        return all.subList(0, count);
    }

    static List<HistoryEvent> events(AssetTag tag, String position) {
        List<HistoryEvent> events = new ArrayList<>();
        String[] texts = {
            "diaphragm replaced after an open coil", "passed, 0.4 dB off its baseline", "first sweep, baseline taken"
        };
        HistoryEvent.Kind[] kinds = {
            HistoryEvent.Kind.REPAIRED, HistoryEvent.Kind.CHECKED_IN, HistoryEvent.Kind.COMMISSIONED
        };
        for (int i = 0; i < texts.length; i++) {
            events.add(new HistoryEvent(
                    new UUID(7, i),
                    tag,
                    position,
                    SCANNED.minusSeconds(86_400L * 40 * (i + 1)),
                    "R. Hale",
                    kinds[i],
                    words(texts[i])));
        }
        return events;
    }
}
