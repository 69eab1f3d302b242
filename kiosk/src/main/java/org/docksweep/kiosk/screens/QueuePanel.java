package org.docksweep.kiosk.screens;

import java.awt.Dimension;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Optional;
import java.util.function.IntConsumer;
import org.docksweep.contract.BenchJobBody;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.kiosk.bench.BenchState;

/** The queue, most urgent first: each job as a small cabinet with the driver at fault marked, its tag, when it is needed. */
final class QueuePanel extends PaintedPanel {
    private static final long serialVersionUID = 1;
    private static final int ROW = 76;
    private static final int HEAD = 40;

    private final transient List<CabinetModel> models;
    private final transient DateTimeFormatter day;
    private transient List<BenchJobBody> queue = List.of();
    private int marked = -1;
    private int first;

    QueuePanel(Sizes sizes, Texts texts, List<CabinetModel> models, IntConsumer mark) {
        super(sizes, texts);
        this.models = models;
        this.day = DateTimeFormatter.ofPattern("EEE d MMM", texts.locale());
        setName("bench-queue");
        addMouseListener(new MouseAdapter() {
            @Override
            public void mousePressed(MouseEvent event) {
                int row = (event.getY() - sizes.px(HEAD)) / sizes.px(ROW);
                if (event.getY() >= sizes.px(HEAD) && row < rows()) {
                    mark.accept(first + row);
                }
            }
        });
    }

    void show(BenchState state) {
        queue = state.queue();
        marked = state.marked();
        getAccessibleContext().setAccessibleName(texts.say("bench.queue", queue.size()));
        repaint();
    }

    private int rows() {
        return Math.max(1, (getHeight() - sizes.px(HEAD + 8)) / sizes.px(ROW));
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(sizes.px(296), sizes.px(HEAD + ROW));
    }

    @Override
    void paint(Graphics2D g, Ink ink) {
        card(g, Look.color("card"));
        int pad = sizes.px(12);
        ink.line(
                texts.say("bench.queue", queue.size()),
                sizes.semiBold(18),
                Look.color("ink"),
                new Rectangle(pad, sizes.px(6), getWidth() - 2 * pad, sizes.px(30)),
                Ink.Align.LEFT);
        int rows = rows();
        first = Math.max(0, Math.min(first, queue.size() - rows));
        if (marked >= 0) {
            first = Math.max(Math.min(first, marked), marked - rows + 1);
        }
        for (int i = 0; i < rows && first + i < queue.size(); i++) {
            Rectangle box = new Rectangle(
                    sizes.px(4), sizes.px(HEAD) + i * sizes.px(ROW), getWidth() - sizes.px(8), sizes.px(ROW - 4));
            row(g, ink, queue.get(first + i), first + i == marked, box);
        }
    }

    private void row(Graphics2D g, Ink ink, BenchJobBody job, boolean current, Rectangle box) {
        if (current) {
            g.setColor(Tone.ACT.wash());
            g.fill(new RoundRectangle2D.Double(box.x, box.y, box.width, box.height, sizes.px(8), sizes.px(8)));
            g.setColor(Tone.ACT.ink());
            g.fillRect(box.x, box.y + sizes.px(6), sizes.px(5), box.height - sizes.px(12));
        }
        Rectangle picture =
                new Rectangle(box.x + sizes.px(10), box.y + sizes.px(6), sizes.px(56), box.height - sizes.px(12));
        model(job).ifPresent(model -> drawing(g, model, job.faultPositionCode(), picture));
        int x = picture.x + picture.width + sizes.px(10);
        int width = box.x + box.width - x - sizes.px(6);
        String tag = job.tag().value();
        Font bold = Ink.fitting(tag, sizes::bold, new double[] {20, 18, 17, 16, 15}, width, sizes.px(28));
        ink.line(
                tag,
                bold,
                Look.color("ink"),
                new Rectangle(x, box.y + sizes.px(2), width, sizes.px(26)),
                Ink.Align.LEFT);
        String need =
                job.needOn() == null ? texts.say("bench.need-none") : texts.say("bench.need", day.format(job.needOn()));
        small(ink, need, new Rectangle(x, box.y + sizes.px(27), width, sizes.px(21)), job.needOn() != null);
        String stands = texts.say("bench.state", job.state()) + (job.heldBy() == null ? "" : " \u00b7 " + job.heldBy());
        small(ink, stands, new Rectangle(x, box.y + sizes.px(48), width, sizes.px(21)), false);
    }

    private void small(Ink ink, String text, Rectangle box, boolean strong) {
        Font font = Ink.fitting(
                text,
                strong ? sizes::semiBold : sizes::regular,
                new double[] {15, 14, 13, 12, 11},
                box.width,
                box.height);
        ink.line(text, font, Look.color(strong ? "ink" : "quiet"), box, Ink.Align.LEFT);
    }

    Optional<CabinetModel> model(BenchJobBody job) {
        return models.stream().filter(m -> m.code().equals(job.modelCode())).findFirst();
    }

    private void drawing(Graphics2D g, CabinetModel model, String fault, Rectangle area) {
        CabinetDrawing drawing = new CabinetDrawing(model, area);
        drawing.paintFront(g, sizes);
        model.positions().stream().filter(p -> p.code().equals(fault)).forEach(position -> {
            Rectangle2D mouth = drawing.mouthBox(position);
            double size = Math.max(sizes.px(18), Math.min(mouth.getWidth(), mouth.getHeight()) * 0.8);
            Sign.CROSS.paint(
                    g,
                    mouth.getCenterX() - size / 2,
                    mouth.getCenterY() - size / 2,
                    size,
                    Tone.FAULT.plate(),
                    Tone.FAULT.onPlate());
        });
    }
}
