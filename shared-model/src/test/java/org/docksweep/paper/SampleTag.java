package org.docksweep.paper;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
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
import org.docksweep.gate.ReadingState;
import org.docksweep.judge.PointJudgement;
import org.docksweep.judge.PositionState;
import org.docksweep.judge.Prompt;
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
    static final Instant SCANNED = Instant.parse("2025-10-18T01:11:20Z");

    private AssetTag tag = new AssetTag("MCH-000123");
    private CabinetModel model = SampleModels.TIDE_12;
    private String faultPosition = "HF";
    private JobCode job = new JobCode("J01-00042");
    private Reason reason = words("The horn driver is open: its branch is bare network between 1.9 and 8 kHz.");
    private List<Suspect> suspects = SampleEvidence.suspects(2);
    private List<HistoryEvent> events = SampleEvidence.events(tag, "HF");
    private List<MeasurementBody> measurements =
            List.of(measurement(1, SampleCurves.hornOpen(), SampleEvidence.hornReadings()));
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
                        List.of(SampleEvidence.predicting(curve))));
    }
}
