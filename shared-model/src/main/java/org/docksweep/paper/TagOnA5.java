package org.docksweep.paper;

import org.docksweep.paper.PaperFonts.Weight;

/** The tag on A5 landscape: stub across the top, evidence in three columns, lines to fill in at the foot. */
final class TagOnA5 {
    private static final double LEFT = 6;
    private static final double RIGHT = 204;
    private static final double TEAR = 42;
    private static final double QR_MODULE_MM = 0.75;

    private final TagScene scene;
    private final Ink ink;
    private final TagStub stub;
    private final TagBlocks blocks;

    TagOnA5(TagScene scene) {
        this.scene = scene;
        this.ink = scene.ink();
        this.stub = new TagStub(scene);
        this.blocks = new TagBlocks(scene, 6.5);
    }

    void draw() {
        drawStub();
        stub.tearLine(TEAR, 0, 210);
        stub.punchHole(11, 51);
        blocks.verdict(new Box(18, 45, RIGHT - 18, 11), 12);
        ink.line(Weight.REGULAR, 6.5, 5, 18, 59, RIGHT - 18, scene.circumstances());
        drawEvidence();
        drawLines();
        blocks.foot(LEFT, 145, RIGHT - LEFT);
    }

    private void drawStub() {
        String job = scene.jobCode();
        stub.assetTag(LEFT, 20, 102, 12);
        CodeBlocks.drawCode128(ink, job, LEFT - 3, 24, 11);
        double besideCode = LEFT - 3 + CodeBlocks.code128WidthMm(job);
        ink.text(Weight.BOLD, 11, besideCode, 28.5, job);
        ink.paragraph(
                Weight.REGULAR,
                7.5,
                5.5,
                new Box(besideCode, 30, 108 - besideCode, 9),
                scene.model().code() + " " + scene.model().name());
        Box destination = new Box(112, 7, 64, 15);
        stub.destination(destination);
        ink.line(Weight.BOLD, 15, 8, 112, 30, 64, stub.need());
        ink.line(Weight.REGULAR, 8, 6, 112, 36, 64, scene.text().siteName());
        double qrMm = CodeBlocks.qrWidthMm(job, QR_MODULE_MM);
        CodeBlocks.drawQr(ink, job, 207 - qrMm, 5, QR_MODULE_MM);
        ink.textCentre(Weight.BOLD, 9, 207 - qrMm / 2, 30, job);
    }

    private void drawEvidence() {
        new CabinetDrawing(ink, scene.text(), 7.5)
                .draw(
                        new Box(LEFT, 62, 40, 41),
                        scene.model(),
                        scene.content().book(),
                        scene.checkIn().positions(),
                        scene.checkIn().faultPositionCode());
        blocks.driver(new Box(LEFT, 104.5, 40, 17.5));
        Box curve = new Box(49, 61.5, 85, 38);
        scene.curve()
                .ifPresentOrElse(
                        choice -> new CurvePlot(ink, scene.text(), 6.5).draw(curve, choice),
                        () -> ink.paragraph(
                                Weight.REGULAR, 8, 6, curve, scene.text().get("curve.none")));
        new TagReadings(scene, 6.5).draw(new Box(49, 100.5, 85, 22));
        blocks.suspects(new Box(138, 61.5, RIGHT - 138, 29.3));
        blocks.events(new Box(138, 91, RIGHT - 138, 15));
        blocks.cautions(new Box(138, 106.5, RIGHT - 138, 16));
    }

    private void drawLines() {
        blocks.blank(new Box(LEFT, 124, RIGHT - LEFT, 8), "tag.fill.found");
        double y = 133.5;
        double height = 7.5;
        blocks.blank(new Box(LEFT, y, 48, height), "tag.fill.removed");
        blocks.blank(new Box(57, y, 48, height), "tag.fill.fitted");
        blocks.blank(new Box(108, y, 42, height), "tag.fill.proof");
        blocks.blank(new Box(153, y, RIGHT - 153, height), "tag.fill.signature");
    }
}
