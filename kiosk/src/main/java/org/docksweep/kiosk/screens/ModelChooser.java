package org.docksweep.kiosk.screens;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import org.docksweep.fleet.CabinetModel;

/**
 * Which model is the unknown cabinet? Drawings to tap, in place of the cabinet; nothing modal, and the scan line stays
 * live. Six models at a time; more are a page further.
 */
final class ModelChooser extends JPanel {
    private static final long serialVersionUID = 1;
    private static final int PER_PAGE = 6;

    private final transient Sizes sizes;
    private final transient Texts texts;
    private final transient List<CabinetModel> models;
    private final transient Consumer<CabinetModel> chosen;
    private final transient Runnable turned;
    private int page;

    /**
     * Makes the chooser.
     *
     * @param models all models of the house
     * @param chosen hears the choice
     * @param turned hears that another page is shown, so that keys follow
     */
    ModelChooser(Sizes sizes, Texts texts, List<CabinetModel> models, Consumer<CabinetModel> chosen, Runnable turned) {
        super(new MigLayout(
                "insets 0, gap " + sizes.px(8) + "px, fill, wrap 3",
                "[grow,fill,sizegroup]",
                "[][grow,fill,sizegroup]"));
        this.sizes = sizes;
        this.texts = texts;
        this.models = List.copyOf(models);
        this.chosen = chosen;
        this.turned = turned;
        setOpaque(false);
    }

    List<Offer> offers() {
        List<Offer> offers = new ArrayList<>();
        List<CabinetModel> shown = shown();
        for (int i = 0; i < shown.size(); i++) {
            CabinetModel model = shown.get(i);
            offers.add(new Offer(Command.choice(i), Offer.Kind.PLAIN, model.name(), () -> chosen.accept(model)));
        }
        if (models.size() > PER_PAGE) {
            offers.add(new Offer(Command.CHOICE_7, Offer.Kind.PLAIN, texts.say("chooser.more"), this::turn));
        }
        return offers;
    }

    private List<CabinetModel> shown() {
        int from = page * PER_PAGE;
        return models.subList(from, Math.min(models.size(), from + PER_PAGE));
    }

    private void turn() {
        page = (page + 1) * PER_PAGE < models.size() ? page + 1 : 0;
        rebuild();
        turned.run();
    }

    void open() {
        page = 0;
        rebuild();
    }

    private void rebuild() {
        removeAll();
        add(new Title(sizes, texts), "span, growx, h " + sizes.px(48) + "px!");
        List<Offer> offers = offers();
        List<CabinetModel> shown = shown();
        for (int i = 0; i < offers.size(); i++) {
            KeyButton tile = i < shown.size() ? new Tile(sizes, shown.get(i)) : new KeyButton(sizes);
            tile.offer(offers.get(i));
            add(tile, i < shown.size() ? "wmin 0, hmin 0" : "newline, span, growx, h " + sizes.px(Sizes.TOUCH) + "px!");
        }
        revalidate();
        repaint();
    }

    /** The question above the drawings. */
    private static final class Title extends PaintedPanel {
        private static final long serialVersionUID = 1;

        Title(Sizes sizes, Texts texts) {
            super(sizes, texts);
            getAccessibleContext().setAccessibleName(texts.say("chooser.title"));
        }

        @Override
        void paint(Graphics2D g, Ink ink) {
            String text = texts.say("chooser.title");
            Font font = Ink.fitting(
                    text, sizes::bold, new double[] {26, 24, 22, 20, 18}, getWidth() - sizes.px(16), getHeight());
            ink.line(
                    text,
                    font,
                    Look.color("ink"),
                    new Rectangle(sizes.px(8), 0, getWidth() - sizes.px(16), getHeight()),
                    Ink.Align.LEFT);
        }
    }

    /** One model: its front, its key and its name. */
    private static final class Tile extends KeyButton {
        private static final long serialVersionUID = 1;
        private final transient CabinetModel model;

        Tile(Sizes sizes, CabinetModel model) {
            super(sizes);
            this.model = model;
        }

        @Override
        void paintContent(Graphics2D g, Ink ink) {
            int pad = sizes.px(12);
            int nameHeight = sizes.px(48);
            int cap = sizes.px(36);
            int nameTop = getHeight() - nameHeight - pad / 2;
            new CabinetDrawing(model, new Rectangle(pad, pad, getWidth() - 2 * pad, nameTop - 2 * pad))
                    .paintFront(g, sizes);
            paintCap(g, ink, new Rectangle(pad, nameTop + sizes.px(6), cap, sizes.px(28)));
            int left = pad + cap + sizes.px(10);
            Rectangle box = new Rectangle(left, nameTop, getWidth() - left - pad, nameHeight);
            Font font = Ink.fitting(
                    model.name(), sizes::semiBold, new double[] {18, 17, 16, 15, 14, 13, 12}, box.width, box.height);
            int used = Ink.wrap(model.name(), font, box.width).size() * (int) Math.ceil(Ink.lineHeight(font));
            box.y += Math.max(0, (sizes.px(40) - used) / 2);
            ink.paragraph(model.name(), font, writing(), box);
        }
    }
}
