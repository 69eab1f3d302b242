package org.docksweep.kiosk.dock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.mockito.ArgumentMatchers.any;
import static org.mockito.Mockito.doAnswer;
import static org.mockito.Mockito.spy;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.ServiceLoader;
import org.docksweep.contract.DemoHouse;
import org.docksweep.contract.DemoHouseProvider;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.LimitSet;
import org.docksweep.gate.PointReference;
import org.docksweep.gate.ReferenceTeacher;
import org.docksweep.judge.CabinetJudgement;
import org.docksweep.kiosk.fleet.LocalFleet;
import org.docksweep.kiosk.rig.Rigs;
import org.docksweep.sweep.PracticeRig;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepAnalysis;
import org.junit.jupiter.api.Test;

/** What is judged before the first cabinet comes must go the whole way of a judgement, or nothing is gained. */
class WarmUpTest {
    private static final Map<String, String> RIG = Map.of("seed", "1", "moment", "before-hire");

    private final DemoHouse house = ServiceLoader.load(DemoHouseProvider.class)
            .findFirst()
            .orElseThrow()
            .house(1);
    private final List<CabinetJudgement> judged = new ArrayList<>();
    private final Gate gate = watched(new RealGate());

    private Gate watched(RealGate real) {
        RealGate spied = spy(real);
        doAnswer(asked -> {
                    CabinetJudgement judgement = (CabinetJudgement) asked.callRealMethod();
                    judged.add(judgement);
                    return judgement;
                })
                .when(spied)
                .judge(any());
        return spied;
    }

    private PointReference taught() throws RigException {
        AssetTag tag = house.cabinets().stream()
                .filter(c -> c.modelCode().equals("PEBL8"))
                .findFirst()
                .orElseThrow()
                .tag();
        TestPoint point = house.book().cabinetModel("PEBL8").testPoints().get(0);
        try (PracticeRig rig = (PracticeRig) Rigs.open("virtual", RIG)) {
            rig.plug(tag, point.code());
            SweepAnalysis analysis =
                    gate.analyse(rig.play(gate.sweep(point, rig.sampleRateHz()), point.kind(), share -> {}));
            return ReferenceTeacher.teach(
                    house.book(),
                    "PEBL8",
                    point.code(),
                    List.of(new ReferenceTeacher.Unit(analysis.impedance(), analysis.acoustic(), null)));
        }
    }

    private LocalFleet fleet(List<PointReference> references) {
        KioskSnapshot small = SmallHouse.snapshot();
        return new LocalFleet(
                new KioskSnapshot(
                        small.asOf(),
                        small.siteName(),
                        small.timeZone(),
                        house.book(),
                        List.of(),
                        references,
                        List.of(),
                        LimitSet.initial(),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        null,
                        List.of()),
                List.of());
    }

    @Test
    void judgesWhatNoCabinetIs() throws RigException {
        assertThat(new WarmUp(gate).judge(fleet(List.of(taught())))).isTrue();

        assertThat(judged).hasSize(1);
        assertThat(judged.get(0).verdict()).isNotEqualTo(Verdict.PASS);
        assertThat(judged.get(0).points().get(0).impedance())
                .as("the sweep was worked out")
                .isNotNull();
    }

    @Test
    void judgesNothingWhereNothingIsTaught() {
        assertThat(new WarmUp(gate).judge(fleet(List.of()))).isFalse();

        assertThat(judged).isEmpty();
    }
}
