package org.docksweep.paper;

import com.lowagie.text.pdf.PdfContentByte;
import org.docksweep.fleet.Route;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.ReadingState;

/**
 * Signs that tell results apart without colour. Drawn as shapes, so that they look the same in every face and size.
 */
enum Sign {
    /** Good: a ring with a tick. */
    TICK,
    /** Fault: a black disc with a white cross. */
    CROSS,
    /** To be watched: a triangle with an exclamation mark. */
    WATCH,
    /** Says nothing yet, sweep again: an open ring with an arrow head. */
    AGAIN,
    /** Not judged: a short bar. */
    DASH,
    /** Held for a person: a black square with two white bars. */
    HOLD;

    static Sign of(ReadingState state) {
        return switch (state) {
            case OK -> TICK;
            case WATCH -> WATCH;
            case FAULT -> CROSS;
            case NOT_JUDGED -> DASH;
        };
    }

    /** Sign of a check-in; a hold without a sweep has no verdict. */
    static Sign of(Verdict verdict, Route route, boolean watch) {
        if (verdict == null) {
            return route == Route.SAFETY_HOLD || route == Route.MANUAL_HOLD ? HOLD : DASH;
        }
        return switch (verdict) {
            case PASS -> watch ? WATCH : TICK;
            case FAIL -> CROSS;
            case SWEEP_AGAIN -> AGAIN;
        };
    }

    /** Draws the sign into a square whose lower left corner and side are given in points. */
    void draw(PdfContentByte canvas, float left, float bottom, float side) {
        canvas.saveState();
        canvas.concatCTM(side, 0, 0, side, left, bottom);
        canvas.setLineWidth(0.09f);
        canvas.setLineCap(PdfContentByte.LINE_CAP_ROUND);
        canvas.setLineJoin(PdfContentByte.LINE_JOIN_ROUND);
        canvas.setGrayFill(0);
        canvas.setGrayStroke(0);
        shape(canvas);
        canvas.restoreState();
    }

    void draw(Ink ink, double xMm, double yMm, double sideMm) {
        draw(ink.canvas(), ink.x(xMm), ink.y(yMm + sideMm), Ink.points(sideMm));
    }

    private void shape(PdfContentByte canvas) {
        switch (this) {
            case TICK -> {
                canvas.circle(0.5f, 0.5f, 0.44f);
                path(canvas, 0.29f, 0.5f, 0.44f, 0.34f, 0.72f, 0.66f);
            }
            case CROSS -> {
                canvas.circle(0.5f, 0.5f, 0.48f);
                canvas.fill();
                canvas.setGrayStroke(1);
                canvas.setLineWidth(0.13f);
                path(canvas, 0.31f, 0.31f, 0.69f, 0.69f);
                path(canvas, 0.31f, 0.69f, 0.69f, 0.31f);
            }
            case WATCH -> {
                path(canvas, 0.06f, 0.08f, 0.94f, 0.08f, 0.5f, 0.92f, 0.06f, 0.08f);
                path(canvas, 0.5f, 0.36f, 0.5f, 0.62f);
                canvas.circle(0.5f, 0.215f, 0.055f);
                canvas.fill();
                return;
            }
            case AGAIN -> {
                canvas.arc(0.1f, 0.1f, 0.9f, 0.9f, 60, 290);
                canvas.stroke();
                canvas.moveTo(0.98f, 0.62f);
                canvas.lineTo(0.68f, 0.92f);
                canvas.lineTo(0.62f, 0.58f);
                canvas.fill();
            }
            case DASH -> path(canvas, 0.2f, 0.5f, 0.8f, 0.5f);
            case HOLD -> {
                canvas.rectangle(0.04f, 0.04f, 0.92f, 0.92f);
                canvas.fill();
                canvas.setGrayFill(1);
                canvas.rectangle(0.28f, 0.24f, 0.15f, 0.52f);
                canvas.rectangle(0.57f, 0.24f, 0.15f, 0.52f);
                canvas.fill();
            }
        }
    }

    private static void path(PdfContentByte canvas, float... xy) {
        canvas.moveTo(xy[0], xy[1]);
        for (int i = 2; i < xy.length; i += 2) {
            canvas.lineTo(xy[i], xy[i + 1]);
        }
        canvas.stroke();
    }
}
