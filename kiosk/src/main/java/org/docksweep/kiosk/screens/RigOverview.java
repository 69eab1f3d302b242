package org.docksweep.kiosk.screens;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import org.docksweep.kiosk.rig.CheckChart;
import org.docksweep.kiosk.rig.ContactTrend;
import org.docksweep.kiosk.rig.PlugTrend;
import org.docksweep.kiosk.rig.RigDeskState;
import org.docksweep.kiosk.rig.RigSound;

/** How the rig stands: facts, the charts of both check standards, the microphone, and the plug, by the short plug and by cabinets. */
final class RigOverview extends JPanel {
    private static final long serialVersionUID = 1;

    private final transient Texts texts;
    private final RigFactsPanel facts;
    private final List<RigChartPanel> standards;
    private final RigChartPanel gain;
    private final RigChartPanel hearing;
    private final RigChartPanel shortPlug;
    private final RigChartPanel cabinets;

    RigOverview(Sizes sizes, Texts texts) {
        super(new MigLayout(
                "insets 0, gap " + sizes.px(8) + "px, fill",
                "[grow,fill,sg][grow,fill,sg][grow,fill,sg]",
                "[" + sizes.px(60) + "px!,fill][grow,fill,sg half][grow,fill,sg half]"));
        setOpaque(false);
        this.texts = texts;
        facts = new RigFactsPanel(sizes, texts);
        standards = List.of(new RigChartPanel(sizes, texts, 64), new RigChartPanel(sizes, texts, 64));
        gain = new RigChartPanel(sizes, texts, 64);
        hearing = new RigChartPanel(sizes, texts, 64);
        shortPlug = new RigChartPanel(sizes, texts, 64);
        cabinets = new RigChartPanel(sizes, texts, 64);
        add(facts, "spanx 3, wmin 0, hmin 0, wrap");
        standards.forEach(chart -> add(chart, "wmin 0, hmin 0, w 8:8:, h 8:8:"));
        add(shortPlug, "wmin 0, hmin 0, w 8:8:, h 8:8:, wrap");
        add(gain, "wmin 0, hmin 0, w 8:8:, h 8:8:");
        add(hearing, "wmin 0, hmin 0, w 8:8:, h 8:8:");
        add(cabinets, "wmin 0, hmin 0, w 8:8:, h 8:8:");
    }

    void show(RigDeskState state) {
        facts.show(state);
        for (int i = 0; i < standards.size(); i++) {
            if (i < state.charts().size()) {
                standards.get(i).show(state.charts().get(i));
            } else {
                standards
                        .get(i)
                        .showNothing(
                                texts.say(i == 0 ? "rig.chart.first" : "rig.chart.second"),
                                texts.say("rig.chart.none"));
            }
        }
        show(state.sound());
        // The pair that is worse off stands in front.
        Optional<ContactTrend> contact =
                state.contacts().stream().max(Comparator.comparingDouble(ContactTrend::riseOhm));
        contact.ifPresentOrElse(
                shortPlug::show,
                () -> shortPlug.showNothing(texts.say("rig.chart.plug"), texts.say("rig.chart.no-contact")));
        Optional<PlugTrend> plug = state.plugs().stream()
                .max(Comparator.comparingDouble(trend -> trend.rise().ohm()));
        plug.ifPresentOrElse(
                cabinets::show,
                () -> cabinets.showNothing(texts.say("rig.chart.cabinets"), texts.say("rig.chart.no-cabinets")));
    }

    /** Gain in one chart; in the other the way of the sound, or the capsule when only that is out of its limits. */
    private void show(RigSound sound) {
        if (sound.charts().isEmpty()) {
            String nothing = texts.say(sound.accepted().isPresent() ? "rig.chart.sound-none" : "rig.fact.sound-none");
            gain.showNothing(texts.say("rig.chart.sound-gain"), nothing);
            hearing.showNothing(texts.say("rig.chart.sound-way"), nothing);
            return;
        }
        gain.showSound(sound.charts().get(0));
        CheckChart way = sound.charts().get(1);
        CheckChart capsule = sound.charts().get(2);
        hearing.showSound(capsule.signalsNow() && !way.signalsNow() ? capsule : way);
    }
}
