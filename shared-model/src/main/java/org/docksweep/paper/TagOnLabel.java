package org.docksweep.paper;

import org.docksweep.paper.PaperFonts.Weight;

/** The tag on a 100 x 150 mm label: the same content, narrower and from top to bottom. */
final class TagOnLabel {
    private static final double LEFT = 4;
    private static final double RIGHT = 96;
    private static final double WIDTH = RIGHT - LEFT;
    private static final double TEAR = 45;
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
        stub.punchHole(9, 52);
        blocks.verdict(new Box(15, 47.5, RIGHT - 15, 9.5), 9);
        ink.line(Weight.REGULAR, 6, 4.5, LEFT, 60, WIDTH, scene.circumstances());
        drawEvidence();
        drawLines();
        blocks.foot(LEFT, 148, WIDTH);
    }

    private void drawStub() {
        String job = scene.jobCode();
        stub.assetTag(LEFT, 15, WIDTH, 11.5);
        CodeBlocks.drawCode128(ink, job, LEFT - 3, 18, 10);
        ink.text(Weight.BOLD, 9, LEFT, 32, job);
        ink.line(
                Weight.REGULAR,
                6.5,
                5,
                LEFT + 20,
                32,
                50,
                scene.model().code() + " " + scene.model().name());
        double qrMm = CodeBlocks.qrWidthMm(job, QR_MODULE_MM);
        CodeBlocks.drawQr(ink, job, 99 - qrMm, 16.5, QR_MODULE_MM);
        stub.destination(new Box(LEFT, 34, 42, 9));
        ink.line(Weight.BOLD, 12, 7, 48, 41, RIGHT - 48, stub.need());
    }

    private void drawEvidence() {
        new CabinetDrawing(ink, scene.text(), 6)
                .draw(
                        new Box(LEFT, 61.5, 25, 28),
                        scene.model(),
                        scene.content().book(),
                        scene.checkIn().positions(),
                        scene.checkIn().faultPositionCode());
        Box curve = new Box(31, 61, RIGHT - 31, 29);
        scene.curve()
                .ifPresentOrElse(
                        choice -> new CurvePlot(ink, scene.text(), 5.5).draw(curve, choice),
                        () -> ink.paragraph(Weight.REGULAR, 7, 5.5, curve, scene.text().get("curve.none")));
        new TagReadings(scene, 6).draw(new Box(LEFT, 90.5, WIDTH, 16.5));
        blocks.suspects(new Box(LEFT, 107.5, 52, 18));
        blocks.events(new Box(58, 107.5, RIGHT - 58, 18));
        blocks.driver(new Box(LEFT, 126, 44, 10));
        blocks.cautions(new Box(50, 126, RIGHT - 50, 10));
    }

    private void drawLines() {
        blocks.blank(new Box(LEFT, 136.2, 60, 5), "tag.fill.found");
        blocks.blank(new Box(66, 136.2, RIGHT - 66, 5), "tag.fill.proof");
        blocks.blank(new Box(LEFT, 141.5, 29, 4.8), "tag.fill.removed");
        blocks.blank(new Box(35, 141.5, 29, 4.8), "tag.fill.fitted");
        blocks.blank(new Box(66, 141.5, RIGHT - 66, 4.8), "tag.fill.signature");
    }
}
