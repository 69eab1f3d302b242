package org.docksweep.kiosk.screens;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.util.Optional;
import org.docksweep.kiosk.printing.PaperView;

/** A paper before it is printed: as it will come out, as large as there is room, with its size and where it goes. */
final class PaperPanel extends PaintedPanel {
    private static final long serialVersionUID = 1;

    private transient Optional<PaperView> view = Optional.empty();
    private transient String facts = "";

    PaperPanel(Sizes sizes, Texts texts) {
        super(sizes, texts);
        setName("paper");
        show(Optional.empty());
    }

    void show(Optional<PaperView> next) {
        view = next;
        facts = next.map(this::facts).orElse("");
        getAccessibleContext().setAccessibleName((texts.say("paper.title") + ". " + facts).strip());
        repaint();
    }

    private String facts(PaperView paper) {
        String size = texts.say("paper.size", Math.round(paper.widthMm()), Math.round(paper.heightMm()), paper.pages());
        return size + " "
                + paper.queue()
                        .map(queue -> texts.say("paper.to-queue", queue))
                        .orElseGet(() -> texts.say("paper.to-folder"));
    }

    @Override
    void paint(Graphics2D g, Ink ink) {
        card(g, Look.color("card"));
        Rectangle box = inside(16);
        ink.line(
                texts.say("paper.title"),
                sizes.bold(26),
                Look.color("ink"),
                new Rectangle(box.x, box.y, box.width, sizes.px(36)),
                Ink.Align.LEFT);
        int foot = sizes.px(48);
        Rectangle below = new Rectangle(box.x, box.y + box.height - foot, box.width, foot);
        ink.paragraph(
                facts,
                Ink.fitting(facts, sizes::semiBold, new double[] {18, 17, 16, 15, 14}, below.width, below.height),
                Look.color("quiet"),
                below);
        int top = box.y + sizes.px(44);
        view.ifPresent(
                paper -> page(g, paper.page(), new Rectangle(box.x, top, box.width, below.y - sizes.px(8) - top)));
    }

    private void page(Graphics2D g, BufferedImage page, Rectangle room) {
        double scale = Math.min(room.width / (double) page.getWidth(), room.height / (double) page.getHeight());
        int width = (int) (page.getWidth() * scale);
        int height = (int) (page.getHeight() * scale);
        int x = room.x + (room.width - width) / 2;
        int y = room.y + (room.height - height) / 2;
        g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
        g.drawImage(page, x, y, width, height, null);
        // White paper on a white card would have no edge.
        g.setColor(Color.GRAY);
        g.drawRect(x, y, width - 1, height - 1);
    }
}
