package org.docksweep.paper;

import java.util.List;
import org.docksweep.gate.Reading;
import org.docksweep.gate.ReadingState;
import org.docksweep.paper.PaperFonts.Weight;

/** Readings against their reference as a table that fills a box and says how many did not fit. */
final class TagReadings {
    private static final double LEAST_PT = 5;
    /** Right edges of the number columns and left edge of the state, as shares of the width. */
    private static final double VALUE = 0.54;

    private static final double REFERENCE = 0.67;
    private static final double LIMITS = 0.845;
    private static final double STATE = 0.86;

    private final TagScene scene;
    private final Ink ink;
    private final PaperText text;
    private final double fontPt;

    TagReadings(TagScene scene, double fontPt) {
        this.scene = scene;
        this.ink = scene.ink();
        this.text = scene.text();
        this.fontPt = fontPt;
    }

    void draw(Box box) {
        List<Reading> readings = scene.readings();
        if (readings.isEmpty()) {
            return;
        }
        double rowMm = Ink.lineMm(fontPt) + 0.15;
        double baseline = box.y() + Ink.ascentMm(fontPt);
        quantity(box, baseline, Weight.BOLD, text.get("tag.readings"));
        number(box, baseline, 0.42, VALUE, Weight.BOLD, text.get("readings.value"));
        number(box, baseline, VALUE, REFERENCE, Weight.BOLD, text.get("readings.reference"));
        number(box, baseline, REFERENCE, LIMITS, Weight.BOLD, text.get("readings.limits"));
        ink.line(
                Weight.BOLD,
                fontPt,
                LEAST_PT,
                box.x() + STATE * box.width(),
                baseline,
                (1 - STATE) * box.width(),
                text.get("readings.state"));
        double ruleY = box.y() + Ink.lineMm(fontPt) - 0.2;
        ink.rule(box.x(), ruleY, box.right(), ruleY, Ink.FINE_MM);
        Box rows = box.below(Ink.lineMm(fontPt) + 0.3);
        int room = (int) (rows.height() / rowMm + 1e-6);
        int shown = readings.size() <= room ? readings.size() : room - 1;
        for (int i = 0; i < shown; i++) {
            row(new Box(rows.x(), rows.y() + i * rowMm, rows.width(), rowMm), readings.get(i));
        }
        if (shown < readings.size()) {
            quantity(
                    rows,
                    rows.y() + shown * rowMm + Ink.ascentMm(fontPt),
                    Weight.REGULAR,
                    text.get("tag.more", text.count(readings.size() - shown)));
        }
    }

    private void row(Box row, Reading reading) {
        double baseline = row.y() + Ink.ascentMm(fontPt);
        Weight weight = reading.state() == ReadingState.FAULT ? Weight.BOLD : Weight.REGULAR;
        String place = reading.positionCode() == null ? reading.testPointCode() : reading.positionCode();
        quantity(
                row,
                baseline,
                weight,
                place + "  " + text.word("reading", reading.kind()) + ", "
                        + reading.kind().unit());
        number(row, baseline, 0.42, VALUE, weight, text.value(reading.kind(), reading.value()));
        number(row, baseline, VALUE, REFERENCE, weight, reference(reading));
        number(row, baseline, REFERENCE, LIMITS, weight, limits(reading));
        double side = fontPt * 0.32;
        double x = row.x() + STATE * row.width();
        Sign.of(reading.state()).draw(ink, x, baseline - side * 0.88, side);
        ink.line(
                weight,
                fontPt,
                4.5,
                x + side + 0.6,
                baseline,
                row.right() - x - side - 0.6,
                text.word("state", reading.state()));
    }

    private void quantity(Box box, double baselineMm, Weight weight, String words) {
        ink.line(weight, fontPt, LEAST_PT, box.x(), baselineMm, 0.42 * box.width(), words);
    }

    private void number(Box box, double baselineMm, double from, double to, Weight weight, String number) {
        double room = (to - from) * box.width() - 0.8;
        double size = ink.fittingSize(weight, fontPt, 4.5, room, number);
        ink.textRight(weight, size, box.x() + to * box.width(), baselineMm, number);
    }

    private String reference(Reading reading) {
        return reading.reference() == null ? text.get("reading.none") : text.value(reading.kind(), reading.reference());
    }

    private String limits(Reading reading) {
        Double lower = reading.lowerLimit();
        Double upper = reading.upperLimit();
        if (lower == null && upper == null) {
            return text.get("reading.none");
        }
        if (lower == null) {
            return text.get("reading.limits.most", text.value(reading.kind(), upper));
        }
        return upper == null
                ? text.get("reading.limits.least", text.value(reading.kind(), lower))
                : text.get("reading.limits.both", text.value(reading.kind(), lower), text.value(reading.kind(), upper));
    }
}
