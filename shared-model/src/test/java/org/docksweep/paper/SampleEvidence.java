package org.docksweep.paper;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.docksweep.acoustic.ThirdOctave;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.contract.MeasurementBody;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Verdict;
import org.docksweep.fleet.VisualItem;
import org.docksweep.gate.Finding;
import org.docksweep.gate.Reading;
import org.docksweep.gate.ReadingKind;
import org.docksweep.gate.ReadingState;
import org.docksweep.judge.PointJudgement;
import org.docksweep.judge.Prompt;
import org.docksweep.suspect.FaultKind;
import org.docksweep.suspect.PredictedCurve;
import org.docksweep.suspect.Suspect;
import org.docksweep.sweep.AcousticCurve;
import org.docksweep.sweep.ImpedanceCurve;
import org.docksweep.sweep.SoundPrint;

/** Evidence for sample tags, and tags that are more than ordinary. */
final class SampleEvidence {
    private SampleEvidence() {}

    /** Everything long at once: what a tag must still hold. */
    static SampleTag crowded() {
        String sentence = "The second low driver of this cabinet is open: the dead cone moves as a passive radiator, "
                + "resistance and inductance have doubled, and a third peak stands between the two of the box, "
                + "which no healthy unit of this model has ever shown at any temperature";
        String step =
                "Take the grille off, look at the lead-ins of both drivers, measure the resistance at each driver "
                        + "itself with the other one disconnected, then at the connector plate";
        List<Suspect> suspects = suspects(3).stream()
                .map(s -> new Suspect(
                        s.kind(), "IN", "LF2", null, s.probability(), SampleTag.words(sentence), SampleTag.words(step)))
                .toList();
        List<HistoryEvent> events = events(new AssetTag("WWWWW-88888888"), "LF2").stream()
                .map(e -> new HistoryEvent(
                        e.id(),
                        e.tag(),
                        e.positionCode(),
                        e.at(),
                        "Wilhelmina Featherstonehaugh",
                        e.kind(),
                        SampleTag.words(step)))
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
                .measurements(List.of(SampleTag.measurement(3, SampleCurves.hornOpen(), readings)));
    }

    /** A powered cabinet: only the microphone saw it. */
    static SampleTag powered() {
        PointJudgement judgement = new PointJudgement(
                "LINE",
                Verdict.FAIL,
                Prompt.NONE,
                SampleTag.words("weak"),
                null,
                SampleCurves.microphone(18),
                List.of(new Reading(
                        ReadingKind.WAY_LEVEL, "LINE", "HF", -18.1, 0.4, 0.0, -6.0, null, ReadingState.FAULT)),
                List.of(new Finding(
                        ReadingState.FAULT, "LINE", null, "HF", 2000.0, 20_000.0, SampleTag.words("way weak"))),
                List.of());
        return new SampleTag()
                .model(SampleModels.SKIFF_P, "HF")
                .reason("The horn is 18 dB down at the microphone.")
                .references(List.of(SampleCurves.microphoneReference()))
                .measurements(
                        List.of(new MeasurementBody(new UUID(4, 9), SampleTag.SCANNED, 1, null, null, judgement)));
    }

    /** The curve is healthy, but a coil rubs or a part is loose. */
    static SampleTag touching() {
        double[] noise = SampleCurves.microphone(0).noiseDb();
        List<SoundPrint.Band> bands = new ArrayList<>();
        for (int n = 16; n < 34; n++) {
            double strokeDb = -44 - 6 * Math.abs(n - 19);
            bands.add(new SoundPrint.Band(
                    ThirdOctave.centreHz(n - 30), new double[] {-40}, -66, Math.max(-60, strokeDb), 12, -68));
        }
        AcousticCurve heard = SampleCurves.microphone(0)
                .with(new SoundPrint(
                        0.003,
                        new double[noise.length],
                        2,
                        20,
                        bands,
                        new SoundPrint.Event(66, 94, 0.25, -44, 14, 9, 0.7),
                        Set.of()));
        PointJudgement judgement = new PointJudgement(
                "IN",
                Verdict.FAIL,
                Prompt.NONE,
                Reason.of("verdict-touching", "78 Hz"),
                SampleCurves.healthy(),
                heard,
                hornReadings(),
                List.of(new Finding(
                        ReadingState.FAULT, "IN", null, null, 66.0, 94.0, Reason.of("verdict-touching", "78 Hz"))),
                List.of(new Suspect(
                        FaultKind.COIL_RUBS,
                        "IN",
                        "LF",
                        null,
                        0.7,
                        Reason.of("suspect-coil-rubs", "LF", "78 Hz", "\u221244 dB"),
                        Reason.of("next-coil-rubs", "LF"))));
        return new SampleTag()
                .reason("Buzz at 78 Hz; the curve is healthy. Coil rub or loose part: press test to tell.")
                .suspects(judgement.suspects())
                .measurements(
                        List.of(new MeasurementBody(new UUID(4, 10), SampleTag.SCANNED, 1, null, null, judgement)));
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

    static List<Reading> hornReadings() {
        return List.of(
                new Reading(ReadingKind.DC_RESISTANCE_20C, "IN", "LF", 5.62, 0.04, 5.6, 5.1, 6.2, ReadingState.OK),
                new Reading(ReadingKind.TUNING, "IN", "LF", 52.3, 0.4, 52.0, 47.0, 57.0, ReadingState.OK),
                new Reading(ReadingKind.PEAK_FREQUENCY, "IN", "LF", 83.1, 0.6, 82.0, 70.0, 95.0, ReadingState.WATCH),
                new Reading(ReadingKind.MINIMUM, "IN", null, 0.61, 0.03, 5.9, 5.2, null, ReadingState.FAULT),
                new Reading(ReadingKind.IMPEDANCE_DEVIATION, "IN", "HF", 21.4, 0.3, 0.0, null, 1.5, ReadingState.FAULT),
                new Reading(ReadingKind.WAY_LEVEL, "IN", "HF", -38.2, 0.5, null, null, null, ReadingState.NOT_JUDGED));
    }

    /** A first suspect that explains the curve but for a little. */
    static Suspect predicting(ImpedanceCurve curve) {
        Suspect first = suspects(1).get(0);
        if (curve == null) {
            return first;
        }
        List<Double> hz = new ArrayList<>();
        List<Double> ohm = new ArrayList<>();
        double[] measured = curve.magnitudesOhm();
        for (int i = 0; i < measured.length; i++) {
            hz.add(curve.frequencyHz()[i]);
            ohm.add(measured[i] * (1 + 0.03 * Math.sin(i * 0.2)));
        }
        return new Suspect(
                first.kind(),
                first.testPointCode(),
                first.positionCode(),
                first.elementId(),
                first.probability(),
                first.evidence(),
                first.nextStep(),
                List.of(),
                null,
                new PredictedCurve(hz, ohm));
    }

    static List<Suspect> suspects(int count) {
        List<Suspect> all = List.of(
                new Suspect(
                        FaultKind.DRIVER_OPEN,
                        "IN",
                        "HF",
                        null,
                        0.81,
                        SampleTag.words("no current above 1.9 kHz"),
                        SampleTag.words(
                                "Measure the resistance at the driver itself; look at the lead-in joint first.")),
                new Suspect(
                        FaultKind.PART_OPEN,
                        "IN",
                        null,
                        "C2",
                        0.16,
                        SampleTag.words("branch open"),
                        SampleTag.words("Bridge C2 and sweep again."),
                        List.of(SampleTag.words("HF open")),
                        SampleTag.words("Measure at the driver."),
                        null),
                new Suspect(
                        FaultKind.CONTACT_RESISTANCE,
                        "IN",
                        "HF",
                        null,
                        0.03,
                        SampleTag.words("loose"),
                        SampleTag.words("Pull at the spades of the horn driver.")));
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
                    SampleTag.SCANNED.minusSeconds(86_400L * 40 * (i + 1)),
                    "R. Hale",
                    kinds[i],
                    SampleTag.words(texts[i])));
        }
        return events;
    }
}
