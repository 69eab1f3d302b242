package org.docksweep.paper;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.docksweep.acoustic.BurstCurve;
import org.docksweep.circuit.Copper;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.FindingBody;
import org.docksweep.contract.JobEvidence;
import org.docksweep.contract.MeasurementBody;
import org.docksweep.contract.PartExchangeBody;
import org.docksweep.contract.ProofSweepBody;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.Baseline;
import org.docksweep.judge.DecidingCurve;
import org.docksweep.judge.PointJudgement;
import org.docksweep.paper.SheetTable.Cell;
import org.docksweep.sweep.AcousticCurve;
import org.docksweep.sweep.ImpedanceCurve;

/**
 * The evidence sheet of a repair, for whoever asks who broke it: when the cabinet last passed and on which order it was
 * out, its curves before, at the failure and after, what was found, what was replaced. It states what was measured and
 * found; it blames nobody. A4.
 */
public final class EvidenceSheet {
    private static final double CURVES_MM = 72;

    private final JobEvidence evidence;
    private final PaperText text;
    private final Sheet sheet;

    private EvidenceSheet(JobEvidence evidence, PaperContext context) {
        this.evidence = evidence;
        this.text = new PaperText(context);
        var job = evidence.file().job();
        this.sheet = new Sheet(
                text,
                text.get("evidence.title", job.tag()),
                text.get(
                        "evidence.subtitle", evidence.model().name(), job.code(), text.word("job-state", job.state())));
    }

    /**
     * Draws the sheet.
     *
     * @param evidence evidence of a job
     * @param context language, time zone and who prints
     * @return the document, a PDF of one or more pages
     */
    public static byte[] render(JobEvidence evidence, PaperContext context) {
        return new EvidenceSheet(evidence, context).draw();
    }

    private byte[] draw() {
        CheckInBody failure = evidence.failure();
        String order = evidence.lastOrder() == null
                ? text.get("reading.none")
                : evidence.lastOrder().orderNumber();
        sheet.figures(List.of(
                new Sheet.Figure(
                        lastGood().map(text::date).orElse(text.get("reading.none")),
                        text.get("evidence.last-good"),
                        false),
                new Sheet.Figure(text.date(failure.finishedAt()), text.get("evidence.failed"), false),
                new Sheet.Figure(order, text.get("evidence.order"), false)));
        sheet.sentence(
                evidence.lastOrder() == null
                        ? text.get("evidence.no-order")
                        : text.get(
                                "evidence.who",
                                evidence.lastOrder().customer(),
                                evidence.lastOrder().orderNumber(),
                                text.date(evidence.lastOrder().at())));
        sheet.sentence(text.get(
                "evidence.failure",
                text.moment(failure.finishedAt()),
                failure.operator(),
                text.reason(failure.reason())));
        curves();
        sheet.table(findings(), text.get("evidence.none.findings"));
        sheet.table(exchanges(), text.get("evidence.none.exchanges"));
        sheet.table(proofs(), text.get("evidence.none.proofs"));
        sheet.sentence(text.get("evidence.charge-note"));
        return sheet.close();
    }

    /** Newest of last pass and baselines before the failure: both are good measurements of this very cabinet. */
    private Optional<Instant> lastGood() {
        List<Instant> good = new ArrayList<>();
        if (evidence.lastPass() != null) {
            good.add(evidence.lastPass().finishedAt());
        }
        evidence.before().forEach(b -> good.add(b.takenAt()));
        return good.stream().max(Comparator.naturalOrder());
    }

    private void curves() {
        Optional<PointJudgement> failed = CurveChoice.of(evidence.failure(), evidence.model(), evidence.references())
                .map(CurveChoice::judgement);
        if (failed.isEmpty()) {
            sheet.sentence(text.get("curve.none"));
            return;
        }
        String point = failed.get().testPointCode();
        DecidingCurve shows = DecidingCurve.of(failed.get());
        List<ComparedCurves.Line> lines = new ArrayList<>();
        before(point, shows).ifPresent(lines::add);
        lines.add(line(
                text.get("evidence.curve.failure", text.date(evidence.failure().finishedAt())),
                ComparedCurves.Style.THICK,
                failed.get().impedance(),
                failed.get().acoustic(),
                shows));
        after(point, shows).ifPresent(lines::add);
        String title = text.get("curve." + shows.name(), point);
        sheet.block(new ComparedCurves(title, shows == DecidingCurve.IMPEDANCE, lines)
                .draw(sheet.fonts(), text, CURVES_MM));
    }

    private Optional<ComparedCurves.Line> before(String point, DecidingCurve shows) {
        Optional<Baseline> baseline = evidence.before().stream()
                .filter(b -> b.testPointCode().equals(point))
                .filter(b -> has(shows, b.impedance(), b.acoustic()))
                .findFirst();
        Optional<PointJudgement> passed = evidence.lastPass() == null
                ? Optional.empty()
                : CurveChoice.lastJudgements(evidence.lastPass()).stream()
                        .filter(p -> p.testPointCode().equals(point))
                        .filter(p -> has(shows, p.impedance(), p.acoustic()))
                        .findFirst();
        boolean passIsNewer = passed.isPresent()
                && (baseline.isEmpty()
                        || evidence.lastPass()
                                .finishedAt()
                                .isAfter(baseline.get().takenAt()));
        if (passIsNewer) {
            return Optional.of(line(
                    text.get(
                            "evidence.curve.before",
                            text.date(evidence.lastPass().finishedAt())),
                    ComparedCurves.Style.DASHED,
                    passed.get().impedance(),
                    passed.get().acoustic(),
                    shows));
        }
        return baseline.map(b -> line(
                text.get("evidence.curve.before", text.date(b.takenAt())),
                ComparedCurves.Style.DASHED,
                b.impedance(),
                b.acoustic(),
                shows));
    }

    private Optional<ComparedCurves.Line> after(String point, DecidingCurve shows) {
        List<ProofSweepBody> proofs = evidence.file().proofs();
        for (int i = proofs.size() - 1; i >= 0; i--) {
            for (MeasurementBody measurement : proofs.get(i).measurements()) {
                PointJudgement judged = measurement.judgement();
                boolean shown = has(shows, judged.impedance(), judged.acoustic());
                if (judged.testPointCode().equals(point) && judged.verdict() == Verdict.PASS && shown) {
                    return Optional.of(line(
                            text.get("evidence.curve.after", text.date(measurement.takenAt())),
                            ComparedCurves.Style.THIN,
                            judged.impedance(),
                            judged.acoustic(),
                            shows));
                }
            }
        }
        return Optional.empty();
    }

    private static boolean has(DecidingCurve shows, ImpedanceCurve ohm, AcousticCurve heard) {
        return switch (shows) {
            case IMPEDANCE -> ohm != null;
            case LEVEL -> heard != null;
            case BURSTS ->
                heard != null && heard.print() != null && heard.print().bands().size() > 1;
        };
    }

    private static ComparedCurves.Line line(
            String label, ComparedCurves.Style style, ImpedanceCurve ohm, AcousticCurve heard, DecidingCurve shows) {
        return switch (shows) {
            case IMPEDANCE -> new ComparedCurves.Line(label, style, ohm.frequencyHz(), ohm.magnitudesOhm());
            case LEVEL -> new ComparedCurves.Line(label, style, heard.frequencyHz(), heard.levelDb());
            case BURSTS -> {
                BurstCurve bursts = BurstCurve.of(heard.print());
                yield new ComparedCurves.Line(label, style, bursts.frequencyHz(), bursts.burstDb());
            }
        };
    }

    private SheetTable findings() {
        SheetTable table = new SheetTable(text.get("evidence.table.findings"))
                .words("column.when", 25)
                .words("column.by", 26)
                .words("column.fault-at", 9)
                .words("column.cause", 42)
                .words("column.seen", 36)
                .words("column.coil", 36)
                .words("column.charge", 22);
        for (FindingBody finding : evidence.file().findings()) {
            table.row(
                    Cell.of(text.date(finding.at())),
                    Cell.of(finding.by()),
                    Cell.of(finding.positionCode() == null ? finding.elementId() : finding.positionCode()),
                    Cell.strong(cause(finding)),
                    Cell.of(finding.seen().stream()
                            .map(s -> text.word("seen", s))
                            .collect(Collectors.joining(", "))),
                    Cell.of(coil(finding)),
                    Cell.strong(text.word("charge", finding.charge())));
        }
        return table;
    }

    private String cause(FindingBody finding) {
        String key = "cause-" + finding.cause().name().toLowerCase(Locale.ROOT).replace('_', '-');
        String word = text.reason(Reason.of(key));
        return finding.causeText() == null ? word : word + ": " + finding.causeText();
    }

    /** Resistance as measured, referred to 20 C where the temperature is known, beside that of the model. */
    private String coil(FindingBody finding) {
        if (finding.coilOpen()) {
            return text.get("evidence.coil.open");
        }
        if (finding.coilResistanceOhm() == null) {
            return text.get("evidence.coil.none");
        }
        double measured = finding.coilResistanceOhm();
        String words = finding.coilCelsius() == null
                ? text.get("evidence.coil", text.number(measured, 2))
                : text.get(
                        "evidence.coil.at20",
                        text.number(measured, 2),
                        text.number(finding.coilCelsius(), 0),
                        text.number(Copper.referredTo20C(measured, finding.coilCelsius()), 2));
        return words
                + driver(finding.positionCode())
                        .map(d -> " " + text.get("evidence.coil.model", text.number(d.dcResistanceOhm(), 2)))
                        .orElse("");
    }

    private Optional<DriverModel> driver(String positionCode) {
        return evidence.model().positions().stream()
                .filter(p -> p.code().equals(positionCode))
                .flatMap(p -> evidence.drivers().stream().filter(d -> d.code().equals(p.driverModelCode())))
                .findFirst();
    }

    private SheetTable exchanges() {
        SheetTable table = new SheetTable(text.get("evidence.table.exchanges"))
                .words("column.when", 25)
                .words("column.by", 26)
                .words("column.fault-at", 9)
                .words("column.removed", 60)
                .words("column.fitted", 60);
        for (PartExchangeBody exchange : evidence.file().exchanges()) {
            table.row(
                    Cell.of(text.date(exchange.at())),
                    Cell.of(exchange.by()),
                    Cell.of(exchange.positionCode() == null ? exchange.elementId() : exchange.positionCode()),
                    Cell.of(
                            exchange.removed() == null
                                    ? text.get("reading.none")
                                    : text.word("removed", exchange.removed().what())
                                            + serial(exchange.removed().serial())),
                    Cell.of(
                            exchange.fitted() == null
                                    ? text.get("reading.none")
                                    : exchange.fitted().partNumber()
                                            + serial(exchange.fitted().serial())));
        }
        return table;
    }

    private String serial(String serial) {
        return ", " + (serial == null ? text.get("tag.diaphragm.no-serial") : text.get("evidence.serial", serial));
    }

    private SheetTable proofs() {
        SheetTable table = new SheetTable(text.get("evidence.table.proofs"))
                .words("column.when", 36)
                .words("column.by", 26)
                .words("column.swept", 40)
                .words("column.verdict", 34)
                .words("column.heard", 30)
                .words("column.polarity", 30);
        for (ProofSweepBody sweep : evidence.file().proofs()) {
            Verdict verdict = verdict(sweep);
            table.row(
                    Cell.of(text.moment(sweep.at())),
                    Cell.of(sweep.by()),
                    Cell.of(text.word("swept", sweep.subject())
                            + (sweep.positionCode() == null ? "" : " " + sweep.positionCode())),
                    Cell.signed(
                            switch (verdict) {
                                case PASS -> Sign.TICK;
                                case FAIL -> Sign.CROSS;
                                case SWEEP_AGAIN -> Sign.AGAIN;
                            },
                            text.word("verdict", verdict)),
                    Cell.of(text.get(sweep.soundsClean() ? "evidence.heard.clean" : "evidence.heard.noise")),
                    Cell.of(text.word("polarity", sweep.polarity())));
        }
        return table;
    }

    /** Of all its test points; a sweep that says nothing, of a driver without a reference, is no failure. */
    private static Verdict verdict(ProofSweepBody sweep) {
        List<Verdict> all =
                sweep.measurements().stream().map(m -> m.judgement().verdict()).toList();
        if (all.contains(Verdict.FAIL)) {
            return Verdict.FAIL;
        }
        return all.contains(Verdict.SWEEP_AGAIN) ? Verdict.SWEEP_AGAIN : Verdict.PASS;
    }
}
