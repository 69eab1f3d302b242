package org.docksweep.paper;

import org.docksweep.paper.PaperFonts.Weight;

/** The tag on a 100 x 150 mm label: the same content, narrower and from top to bottom. */
final class TagOnLabel {
    private static final double LEFT = 4;
    private static final double RIGHT = 96;
    private static final double WIDTH = RIGHT - LEFT;
    private static final double TEAR = 42;
    private static final double QR_MODULE_MM = 0.625;

    private final TagScene scene;
    private final Ink ink;
    private final TagStub stub;
    private final TagBlocks blocks;

    TagOnLabel(TagScene scene) {
        this.scene = scene;
        this.ink = scene.ink();
        this.stub = new TagStub(scene);
        this.blocks = new TagBlocks(scene, 6);
    }

    void draw() {
        drawStub();
        stub.tearLine(TEAR, 0, 100);
        stub.punchHole(9, 48.5);
        blocks.verdict(new Box(15, 44, RIGHT - 15, 8.5), 9);
        ink.paragraph(Weight.REGULAR, 6, 5, new Box(LEFT, 53, WIDTH, 5.2), scene.circumstances());
        drawEvidence();
        drawLines();
        blocks.foot(LEFT, 148.4, WIDTH);
    }

    private void drawStub() {
        String job = scene.jobCode();
        stub.assetTag(LEFT, 14.5, WIDTH, 11.5);
        CodeBlocks.drawCode128(ink, job, LEFT - 3, 17, 9);
        ink.text(Weight.BOLD, 9, LEFT, 29.7, job);
        ink.line(
                Weight.REGULAR,
                6.5,
                5,
                LEFT + 20,
                29.7,
                50,
                scene.model().code() + " " + scene.model().name());
        double qrMm = CodeBlocks.qrWidthMm(job, QR_MODULE_MM);
        CodeBlocks.drawQr(ink, job, 99 - qrMm, 15, QR_MODULE_MM);
        stub.destination(new Box(LEFT, 31.7, 42, 8.5));
        ink.line(Weight.BOLD, 12, 7, 48, 38.2, RIGHT - 48, stub.need());
    }

    private void drawEvidence() {
        new CabinetDrawing(ink, scene.text(), 6)
                .draw(
                        new Box(LEFT, 59, 25, 27),
                        scene.model(),
                        scene.content().book(),
                        scene.checkIn().positions(),
                        scene.checkIn().faultPositionCode());
        Box curve = new Box(31, 58.5, RIGHT - 31, 27.8);
        scene.curve()
                .ifPresentOrElse(
                        choice -> new CurvePlot(ink, scene.text(), 5.5).draw(curve, choice),
                        () -> ink.paragraph(
                                Weight.REGULAR, 7, 5.5, curve, scene.text().get("curve.none")));
        new TagReadings(scene, 6).draw(new Box(LEFT, 86.6, WIDTH, 16.8));
        blocks.suspects(new Box(LEFT, 103.8, 50, 17.6));
        blocks.events(new Box(56, 103.8, RIGHT - 56, 17.6));
        blocks.driverInline(new Box(LEFT, 121.6, WIDTH, 5));
        blocks.cautionsInline(new Box(LEFT, 126.8, WIDTH, 9.2));
    }

    private void drawLines() {
        blocks.blank(new Box(LEFT, 136.3, WIDTH, 4.9), "tag.fill.found");
        blocks.blank(new Box(LEFT, 141.5, 26, 4.8), "tag.fill.removed");
        blocks.blank(new Box(32, 141.5, 26, 4.8), "tag.fill.fitted");
        blocks.blank(new Box(60, 141.5, RIGHT - 60, 4.8), "tag.fill.proof-signature");
    }
}
