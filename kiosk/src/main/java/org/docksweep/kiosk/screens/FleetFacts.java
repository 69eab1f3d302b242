package org.docksweep.kiosk.screens;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.docksweep.fleet.EnclosureKind;
import org.docksweep.fleet.TestPoint;
import org.docksweep.kiosk.fleet.SafetyTests;
import org.docksweep.kiosk.teaching.ModelStanding;
import org.docksweep.kiosk.teaching.TeachingState;

/** What the fleet page says beside the front of a model, or of a drawing. */
final class FleetFacts {
    private FleetFacts() {}

    static List<FrontPanel.Fact> of(ModelStanding standing, Texts texts) {
        List<FrontPanel.Fact> facts = new ArrayList<>(List.of(
                new FrontPanel.Fact(
                        texts.say("fleet.fact.code"), standing.model().code()),
                new FrontPanel.Fact(
                        texts.say("fleet.fact.points"),
                        standing.model().testPoints().stream()
                                .map(TestPoint::contacts)
                                .collect(Collectors.joining(", "))),
                new FrontPanel.Fact(texts.say("fleet.fact.ready"), Integer.toString(standing.ready())),
                new FrontPanel.Fact(texts.say("fleet.fact.out"), Integer.toString(standing.out())),
                new FrontPanel.Fact(texts.say("fleet.fact.bench"), Integer.toString(standing.bench())),
                new FrontPanel.Fact(texts.say("fleet.fact.held"), Integer.toString(standing.held()))));
        SafetyTests.Count tests = standing.safetyTests();
        if (tests.due() > 0) {
            facts.add(new FrontPanel.Fact(
                    texts.say("fleet.fact.safety-test"),
                    tests.overdue() == 0
                            ? texts.say("fleet.fact.safety-due", tests.due())
                            : texts.say("fleet.fact.safety-overdue", tests.due(), tests.overdue())));
        }
        return List.copyOf(facts);
    }

    static List<FrontPanel.Fact> of(TeachingState.Drawing d, Texts texts) {
        return List.of(
                new FrontPanel.Fact(
                        texts.say("fleet.drawing.box"),
                        texts.say(d.box() == EnclosureKind.VENTED ? "fleet.drawing.vented" : "fleet.drawing.closed")),
                new FrontPanel.Fact(
                        texts.say("fleet.drawing.impedance"), texts.say("fleet.drawing.ohm", d.impedanceOhm())),
                new FrontPanel.Fact(
                        texts.say("fleet.drawing.crossover"), texts.say("fleet.drawing.hertz", d.crossoverHz())),
                new FrontPanel.Fact(
                        texts.say("fleet.drawing.slope"), texts.say("fleet.drawing.db-octave", d.slopeDb())),
                new FrontPanel.Fact(
                        texts.say("fleet.drawing.woofers"), texts.say("fleet.drawing.cones", d.woofers(), d.inches())),
                new FrontPanel.Fact(
                        texts.say("fleet.drawing.pad"),
                        d.padDb() == 0 ? texts.say("fleet.drawing.no-pad") : texts.say("fleet.drawing.db", d.padDb())));
    }
}
