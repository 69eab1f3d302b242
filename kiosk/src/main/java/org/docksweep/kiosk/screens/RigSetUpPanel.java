package org.docksweep.kiosk.screens;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.geom.RoundRectangle2D;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.rig.RigSetUp;
import org.docksweep.kiosk.rig.SetUpField;

/** All fields of the set-up in two columns, the one at hand framed, those with a problem signed. */
final class RigSetUpPanel extends PaintedPanel {
    private static final long serialVersionUID = 1;
    private static final int COLUMNS = 2;
    private static final int ROWS = (SetUpField.values().length + COLUMNS - 1) / COLUMNS;

    private transient RigSetUp setUp;
    private transient List<RigSetUp.Problem> problems = List.of();
    private SetUpField at = SetUpField.PLAY_DEVICE;

    RigSetUpPanel(Sizes sizes, Texts texts, Consumer<SetUpField> tapped) {
        super(sizes, texts);
        addMouseListener(new MouseAdapter() {
            @Override
            public void mousePressed(MouseEvent event) {
                int column = event.getX() * COLUMNS / Math.max(1, getWidth());
                int row = event.getY() * ROWS / Math.max(1, getHeight());
                int index = column * ROWS + row;
                if (index >= 0 && index < SetUpField.values().length) {
                    tapped.accept(SetUpField.values()[index]);
                }
            }
        });
    }

    void show(RigSetUp next, List<RigSetUp.Problem> wrong, SetUpField field) {
        setUp = next;
        problems = wrong;
        at = field;
        getAccessibleContext().setAccessibleName(texts.say("rig.field", field) + ": " + shown(field));
        repaint();
    }

    /** Value of a field in words. */
    String shown(SetUpField field) {
        String value = setUp.value(field);
        if (field == SetUpField.PLAY_DEVICE || field == SetUpField.CAPTURE_DEVICE) {
            return value.isEmpty() ? texts.say("rig.device.first") : value;
        }
        if (field.isInput()) {
            return texts.say("rig.role." + value);
        }
        return switch (field) {
            case AMPLIFIER -> texts.say("rig.amplifier." + value);
            case BITS -> value.equals("auto") ? texts.say("rig.bits.auto") : value;
            case SAMPLE_RATE -> value + " Hz";
            case SENSE_VOLTS -> value.isBlank() ? "?" : value + " V" + amperes();
            case OUTPUT_VOLTS, VOLTAGE_FULL_SCALE -> value.isBlank() ? "?" : value + " V";
            case SENSE_OHM, LOAD_OHM, CHECK_OHM, NETWORK_OHM -> value.isBlank() ? "?" : value + " \u03a9";
            case NETWORK_MICROFARAD -> value + " \u00b5F";
            case LOAD_TOLERANCE -> value + " %";
            case MICROPHONE_PASCALS, FAR_MICROPHONE_PASCALS -> value.isBlank() ? "\u2013" : value + " Pa";
            default -> value;
        };
    }

    /** What the volts mean in amperes, since that is what the input measures. */
    private String amperes() {
        try {
            double amperes = setUp.number(SetUpField.SENSE_VOLTS) / setUp.number(SetUpField.SENSE_OHM);
            return Double.isFinite(amperes) ? String.format(Locale.ROOT, " = %.2f A", amperes) : "";
        } catch (IllegalArgumentException e) {
            // One of the two is not there yet, and its row says so.
            return "";
        }
    }

    @Override
    void paint(Graphics2D g, Ink ink) {
        card(g, Look.color("card"));
        if (setUp == null) {
            return;
        }
        for (SetUpField field : SetUpField.values()) {
            int column = field.ordinal() / ROWS;
            int row = field.ordinal() % ROWS;
            int top = getHeight() * row / ROWS;
            int bottom = getHeight() * (row + 1) / ROWS;
            int left = getWidth() * column / COLUMNS;
            int right = getWidth() * (column + 1) / COLUMNS;
            row(g, ink, field, new Rectangle(left, top, right - left, bottom - top));
        }
    }

    private void row(Graphics2D g, Ink ink, SetUpField field, Rectangle box) {
        int pad = sizes.px(4);
        Rectangle inner = new Rectangle(box.x + pad, box.y + pad / 2, box.width - 2 * pad, box.height - pad);
        if (field == at) {
            RoundRectangle2D frame =
                    new RoundRectangle2D.Double(inner.x, inner.y, inner.width, inner.height, sizes.px(8), sizes.px(8));
            g.setColor(Tone.ACT.wash());
            g.fill(frame);
            g.setColor(Tone.ACT.ink());
            g.setStroke(sizes.stroke(3));
            g.draw(frame);
        }
        int sign = sizes.px(20);
        problems.stream().filter(p -> p.field() == field).findFirst().ifPresent(p -> {
            ReadingState how = p.blocks() ? ReadingState.FAULT : ReadingState.WATCH;
            Sign.of(how)
                    .paint(
                            g,
                            inner.x + sizes.px(8),
                            inner.y + (inner.height - sign) / 2.0,
                            sign,
                            Tone.of(how).ink(),
                            field == at ? Tone.ACT.wash() : Look.color("card"));
        });
        int left = inner.x + sizes.px(36);
        int width = inner.x + inner.width - left - sizes.px(10);
        boolean device = field == SetUpField.PLAY_DEVICE || field == SetUpField.CAPTURE_DEVICE;
        // Names of devices are long.
        int labelWidth = (int) (width * (device ? 0.3 : 0.52));
        Rectangle label = new Rectangle(left, inner.y, labelWidth, inner.height);
        fit(ink, texts.say("rig.field", field), false, label, Ink.Align.LEFT);
        Rectangle value =
                new Rectangle(left + labelWidth + sizes.px(8), inner.y, width - labelWidth - sizes.px(8), inner.height);
        String text = shown(field);
        if (field == at && !field.isNumber()) {
            text = "\u2190\u00a0" + text + "\u00a0\u2192";
        }
        fit(ink, text, true, value, Ink.Align.RIGHT);
    }

    private void fit(Ink ink, String text, boolean strong, Rectangle box, Ink.Align align) {
        Font font = Ink.fitting(
                text,
                strong ? sizes::semiBold : sizes::regular,
                new double[] {18, 17, 16, 15, 14, 13, 12, 11},
                box.width,
                box.height);
        java.util.List<String> lines = Ink.wrap(text, font, box.width);
        int height = (int) Math.ceil(Ink.lineHeight(font));
        int top = box.y + Math.max(0, (box.height - height * lines.size()) / 2);
        for (int i = 0; i < lines.size(); i++) {
            ink.line(
                    lines.get(i),
                    font,
                    Look.color(strong ? "ink" : "quiet"),
                    new Rectangle(box.x, top + i * height, box.width, height),
                    align);
        }
    }
}
