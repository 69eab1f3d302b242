package org.docksweep.kiosk.night;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.docksweep.contract.BenchActionBody.Verb;
import org.docksweep.contract.BenchJobBody;
import org.docksweep.contract.BenchJobFile;
import org.docksweep.contract.FleetStatus;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.contract.ProofSweepBody;
import org.docksweep.contract.ProofSweepBody.Polarity;
import org.docksweep.contract.ProofSweepBody.Subject;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.ConfirmedCause;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.Baseline;

/**
 * Every arrow of the story of a repair: failing cabinet, tag, bench job, diaphragm, two clean sweeps of the bare driver and
 * of the cabinet, signed off, on the shelf with its history, prior changed, part booked, status sheet moved.
 */
final class BenchStory {
    private BenchStory() {}

    static void assertRepaired(BenchMorning.Outcome story) {
        BenchJobFile file = story.file();
        String position = file.job().faultPositionCode();
        assertThat(file.job().checkInIds()).as("opened by the failing check-in").hasSize(1);
        assertThat(file.actions())
                .extracting(a -> a.verb())
                .containsExactly(Verb.ACCEPT, Verb.START_REPAIR, Verb.START_PROOF, Verb.SIGN_OFF);
        assertThat(file.ticks()).isNotEmpty();
        assertThat(file.exchanges()).singleElement().satisfies(e -> {
            assertThat(e.positionCode()).isEqualTo(position);
            assertThat(e.fitted().partNumber()).isEqualTo(story.part().number());
        });
        assertThat(file.proofs()).hasSize(4).allSatisfy(BenchStory::isClean);
        assertThat(file.proofs().subList(0, 2)).allSatisfy(s -> isOf(s, Subject.BARE_DRIVER, position));
        assertThat(file.proofs().subList(2, 4)).allSatisfy(s -> isOf(s, Subject.CABINET, null));
        assertThat(file.proof().cleanDriverSweeps()).containsEntry(position, 2);
        assertThat(file.proof().cleanCabinetSweeps()).isEqualTo(2);
        assertThat(file.job().state()).isEqualTo(BenchJobBody.State.SIGNED_OFF);

        assertThat(story.cabinet().status()).isEqualTo(CabinetStatus.READY);
        assertThat(story.cabinet().drivers())
                .filteredOn(d -> d.positionCode().equals(position))
                .extracting(d -> d.diaphragmSource())
                .containsExactly(story.part().source());
        assertThat(story.history())
                .extracting(HistoryEvent::kind)
                .containsSubsequence(HistoryEvent.Kind.SIGNED_OFF, HistoryEvent.Kind.PROVED, HistoryEvent.Kind.FOUND)
                .contains(HistoryEvent.Kind.CHECKED_IN, HistoryEvent.Kind.INSTALLED, HistoryEvent.Kind.REMOVED);

        assertThat(story.after().findings()).isEqualTo(story.before().findings() + 1);
        assertThat(story.after().kiosk().priorsInForce())
                .as("what the gate takes for likely")
                .isNotEqualTo(story.before().kiosk().priorsInForce());
        assertThat(story.after().stock()).isEqualTo(story.before().stock() - 1);
        assertThat(takenAt(story, story.after()))
                .as("new baseline of every test point with a curve")
                .isNotEmpty()
                .doesNotContainAnyElementsOf(takenAt(story, story.before()));
        FleetStatus.ModelRow before = row(story, story.before());
        FleetStatus.ModelRow after = row(story, story.after());
        assertThat(after.bench()).isEqualTo(before.bench() - 1);
        assertThat(after.ready()).isEqualTo(before.ready() + 1);
        assertThat(story.after().status().benchQueue())
                .extracting(BenchJobBody::code)
                .doesNotContain(file.job().code());
    }

    /** The powered cabinet: its driver passed alone, so it went to a person for its electronics, and not to the shelf. */
    static void assertCleared(BenchJobFile file) {
        assertThat(file.proofs()).hasSize(2).allSatisfy(s -> {
            isClean(s);
            isOf(s, Subject.BARE_DRIVER, file.job().faultPositionCode());
        });
        assertThat(file.findings())
                .singleElement()
                .satisfies(f -> assertThat(f.cause()).isEqualTo(ConfirmedCause.ELECTRONICS));
        assertThat(file.job().state()).isEqualTo(BenchJobBody.State.RETURNED_UNREPAIRED);
        assertThat(file.cabinet().status()).isEqualTo(CabinetStatus.MANUAL_HOLD);
    }

    private static void isClean(ProofSweepBody sweep) {
        assertThat(sweep.soundsClean()).isTrue();
        assertThat(sweep.polarity()).isNotEqualTo(Polarity.REVERSED);
        assertThat(sweep.measurements()).isNotEmpty().allSatisfy(m -> {
            assertThat(m.judgement().verdict()).isEqualTo(Verdict.PASS);
            assertThat(m.recordingSha256()).isNotNull();
        });
    }

    private static void isOf(ProofSweepBody sweep, Subject subject, String position) {
        assertThat(sweep.subject()).isEqualTo(subject);
        assertThat(sweep.positionCode()).isEqualTo(position);
    }

    private static List<String> takenAt(BenchMorning.Outcome story, BenchMorning.Look look) {
        return look.kiosk().baselines().stream()
                .filter(b -> b.tag().equals(story.cabinet().tag()))
                .map(Baseline::takenAt)
                .map(Object::toString)
                .toList();
    }

    private static FleetStatus.ModelRow row(BenchMorning.Outcome story, BenchMorning.Look look) {
        return look.status().models().stream()
                .filter(r -> r.modelCode().equals(story.cabinet().modelCode()))
                .findFirst()
                .orElseThrow();
    }
}
