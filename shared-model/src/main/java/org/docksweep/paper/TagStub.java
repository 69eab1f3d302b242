package org.docksweep.paper;

import org.docksweep.paper.PaperFonts.Weight;

/** Pieces of the stub: the asset tag in large figures, the destination, the punch-hole mark, the tear line. */
final class TagStub {
    /**
     * Least height of the figures of the asset tag in millimetres: one two-hundredth of the two metres from which they
     * are read, about 0.29 degrees of the eye's field (common practice, no source).
     */
    static final double FIGURES_MM = 10;

    private static final double HOLE_MM = 5.5;

    private final TagScene scene;
    private final Ink ink;

    TagStub(TagScene scene) {
        this.scene = scene;
        this.ink = scene.ink();
    }

    /** Letters of the house smaller, figures as high as the width allows, never below {@link #FIGURES_MM}. */
    void assetTag(double xMm, double baselineMm, double widthMm, double figuresMm) {
        String tag = scene.checkIn().tag().value();
        int figuresAt = tag.indexOf('-') + 1;
        String letters = tag.substring(0, figuresAt);
        String figures = tag.substring(figuresAt);
        double size = figuresMm / PaperFonts.CAP_HEIGHT * Ink.POINTS_PER_MM;
        double least = FIGURES_MM / PaperFonts.CAP_HEIGHT * Ink.POINTS_PER_MM;
        double lettersPt = 24;
        double lettersMm = ink.fonts().widthMm(Weight.BOLD, lettersPt, letters);
        size = Math.max(least, ink.fittingSize(Weight.BOLD, size, least, widthMm - lettersMm - 0.5, figures));
        double figuresWidthMm = ink.fonts().widthMm(Weight.BOLD, size, figures);
        lettersPt = ink.fittingSize(Weight.BOLD, lettersPt, 8, widthMm - figuresWidthMm - 0.5, letters);
        ink.text(Weight.BOLD, lettersPt, xMm, baselineMm, letters);
        double figuresX = xMm + ink.fonts().widthMm(Weight.BOLD, lettersPt, letters) + 0.5;
        ink.text(Weight.BOLD, size, figuresX, baselineMm, figures);
    }

    /** Arrow and place in white on black. */
    void destination(Box box) {
        ink.fill(box, 0);
        ink.white(() -> {
            double arrowMm = box.height() * 0.9;
            double middle = box.centreY();
            double x = box.x() + box.height() * 0.25;
            double stroke = box.height() * 0.13;
            ink.rule(x, middle, x + arrowMm - stroke, middle, stroke);
            double head = box.height() * 0.26;
            ink.canvas().moveTo(ink.x(x + arrowMm), ink.y(middle));
            ink.canvas().lineTo(ink.x(x + arrowMm - head * 1.2), ink.y(middle - head));
            ink.canvas().lineTo(ink.x(x + arrowMm - head * 1.2), ink.y(middle + head));
            ink.canvas().fill();
            String place = scene.text()
                    .word("route", scene.checkIn().route())
                    .toUpperCase(scene.text().locale());
            double room = box.right() - x - arrowMm - 4;
            double size = ink.fittingSize(
                    Weight.BOLD, box.height() * 0.58 / PaperFonts.CAP_HEIGHT * Ink.POINTS_PER_MM, 8, room, place);
            double baseline = middle + size * PaperFonts.CAP_HEIGHT / Ink.POINTS_PER_MM / 2;
            ink.text(Weight.BOLD, size, x + arrowMm + 2, baseline, place);
        });
    }

    String need() {
        return scene.content().needOn() == null
                ? scene.text().get("tag.need.none")
                : scene.text().get("tag.need", scene.text().day(scene.content().needOn()));
    }

    void tearLine(double yMm, double fromMm, double toMm) {
        ink.dashed(fromMm, yMm, toMm, yMm, Ink.FINE_MM);
        String word = scene.text().get("tag.tear-off");
        double width = ink.fonts().widthMm(Weight.REGULAR, 5.5, word);
        double x = toMm - 12 - width;
        ink.fill(new Box(x - 1, yMm - 1.1, width + 2, 2.2), 1);
        ink.text(Weight.REGULAR, 5.5, x, yMm + 0.7, word);
    }

    /** Where to punch the hole the tag hangs by. */
    void punchHole(double centreXMm, double centreYMm) {
        double half = HOLE_MM / 2;
        ink.ellipse(new Box(centreXMm - half, centreYMm - half, HOLE_MM, HOLE_MM), Ink.FINE_MM);
        ink.rule(centreXMm - half - 1, centreYMm, centreXMm + half + 1, centreYMm, Ink.FINE_MM);
        ink.rule(centreXMm, centreYMm - half - 1, centreXMm, centreYMm + half + 1, Ink.FINE_MM);
    }
}
