package org.docksweep.kiosk.screens;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.util.List;
import java.util.Locale;
import org.docksweep.kiosk.rig.RigDeskState;
import org.docksweep.kiosk.rig.RigSound;

/** When the rig was calibrated, checked, and what its common-mode check, its repeatability study and its microphone read. */
final class RigFactsPanel extends PaintedPanel {
    private static final long serialVersionUID = 1;

    private transient List<String> facts = List.of();

    RigFactsPanel(Sizes sizes, Texts texts) {
        super(sizes, texts);
    }

    void show(RigDeskState state) {
        facts = List.of(
                state.calibrated()
                        .map(c -> texts.say(
                                "rig.fact.calibrated",
                                texts.dayAndClock(c.at()),
                                String.format(texts.locale(), "%.1f", c.loadOhm()),
                                c.operator()))
                        .orElse(texts.say("rig.fact.not-calibrated")),
                state.checked()
                        .map(c -> texts.say(
                                c.passed() ? "rig.fact.passed" : "rig.fact.failed",
                                texts.dayAndClock(c.at()),
                                c.operator()))
                        .orElse(texts.say("rig.fact.not-checked")),
                state.commonMode()
                        .map(c -> texts.say(
                                "rig.fact.common-mode",
                                String.format(Locale.ROOT, "%.0f", c.ratioDb()).replace('-', '\u2212'),
                                texts.dayAndClock(c.at())))
                        .orElse(texts.say("rig.fact.no-common-mode")),
                state.studied()
                        .map(s -> texts.say(
                                "rig.fact.study",
                                String.format(
                                        texts.locale(),
                                        "%.3f",
                                        100 * s.study().impedance().gaugeSpread()),
                                texts.dayAndClock(s.at())))
                        .orElse(texts.say("rig.fact.no-study")),
                sound(state.sound()));
        getAccessibleContext().setAccessibleName(String.join(". ", facts));
        repaint();
    }

    private String sound(RigSound sound) {
        return sound.checked()
                .map(c -> texts.say(
                        c.check().passed() ? "rig.fact.sound-passed" : "rig.fact.sound-failed",
                        texts.dayAndClock(c.at()),
                        c.operator()))
                .or(() -> sound.accepted()
                        .map(a -> texts.say(
                                "rig.fact.sound-accepted",
                                texts.dayAndClock(a.at()),
                                a.tag().value())))
                .orElse(texts.say("rig.fact.sound-none"));
    }

    @Override
    void paint(Graphics2D g, Ink ink) {
        card(g, Look.color("card"));
        int gap = sizes.px(8);
        int margin = sizes.px(12);
        int width = (getWidth() - 2 * margin + gap) / Math.max(1, facts.size()) - gap;
        for (int i = 0; i < facts.size(); i++) {
            Rectangle box = new Rectangle(margin + i * (width + gap), sizes.px(4), width, getHeight() - sizes.px(8));
            Font font = Ink.fitting(
                    facts.get(i), sizes::regular, new double[] {16, 15, 14, 13, 12, 11}, box.width, box.height);
            int height = Ink.wrap(facts.get(i), font, box.width).size() * (int) Math.ceil(Ink.lineHeight(font));
            box.y += Math.max(0, (box.height - height) / 2);
            ink.paragraph(facts.get(i), font, Look.color("ink"), box);
        }
    }
}
