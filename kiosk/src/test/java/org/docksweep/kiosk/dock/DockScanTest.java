package org.docksweep.kiosk.dock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.docksweep.kiosk.dock.SmallHouse.FIRST;
import static org.docksweep.kiosk.dock.SmallHouse.NOT_DUE;
import static org.docksweep.kiosk.dock.SmallHouse.SECOND;
import static org.docksweep.kiosk.dock.SmallHouse.UNKNOWN;

import java.nio.file.Path;
import java.util.Set;
import org.docksweep.contract.CheckInBody;
import org.docksweep.fleet.Route;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.dock.DockState.NoticeAction;
import org.docksweep.kiosk.dock.DockState.Phase;
import org.docksweep.kiosk.dock.DockState.SlotState;
import org.docksweep.kiosk.spool.OutboxItem;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DockScanTest {
    @TempDir
    Path folder;

    private DockBench bench;

    @BeforeEach
    void open() {
        bench = new DockBench(folder);
    }

    @AfterEach
    void close() {
        bench.close();
    }

    @Test
    void readsTagThroughStrayCharactersAndSaysSo() throws InterruptedException {
        bench.dock.scan("\u0002 " + FIRST.value().toLowerCase() + "\r");
        DockState state = bench.await("the visual list", s -> s.phase() == Phase.LOOK);
        assertThat(state.cabinet().orElseThrow().tag()).isEqualTo(FIRST);
        assertThat(state.scans().get(0).outcome().key()).isEqualTo("dock-scan-cleaned");
    }

    @Test
    void takesNeitherOfTwoTagsGluedTogether() throws InterruptedException {
        bench.dock.scan(FIRST.value() + SECOND.value());
        DockState state = bench.notice("dock-two-tags");
        assertThat(state.phase()).isEqualTo(Phase.READY);
        assertThat(state.notice().orElseThrow().text().arguments().get(0))
                .contains(FIRST.value())
                .contains(SECOND.value());
    }

    @Test
    void tellsWhatWasReadWhenItIsNoTag() throws InterruptedException {
        bench.dock.scan("4006381333931");
        assertThat(bench.notice("dock-unreadable").notice().orElseThrow().text().arguments())
                .containsExactly("4006381333931");
        bench.dock.scan("J01-00042");
        bench.notice("dock-job-code");
    }

    @Test
    void takesALabelOfTheGs1SystemForItsCabinet() throws InterruptedException {
        bench.dock.scan("]C180040614141TST1");
        DockState state = bench.await("the visual list", s -> s.phase() == Phase.LOOK);
        assertThat(state.cabinet().orElseThrow().tag()).isEqualTo(FIRST);
    }

    @Test
    void tellsALabelNobodyCarriesFromOneReadWrongly() throws InterruptedException {
        bench.dock.scan("(8003)00614141123452400");
        assertThat(bench.notice("dock-key-unknown")
                        .notice()
                        .orElseThrow()
                        .text()
                        .arguments())
                .containsExactly("(8003)00614141123452400");
        bench.dock.scan("(8003)00614141123453400");
        bench.notice("dock-key-wrong");
    }

    @Test
    void offersToRegisterUnknownCabinetAndChecksItIn() throws InterruptedException {
        bench.dock.scan(UNKNOWN.value());
        DockState asked = bench.notice("dock-unknown-tag");
        assertThat(asked.notice().orElseThrow().actions()).containsExactly(NoticeAction.REGISTER, NoticeAction.DISMISS);
        assertThat(asked.scans().get(0).state()).isEqualTo(ReadingState.FAULT);
        bench.dock.notice(NoticeAction.REGISTER);
        bench.dock.register("NO-SUCH-MODEL");
        bench.notice("dock-unknown-model");
        bench.dock.register("ONE");
        bench.await("the visual list", s -> s.phase() == Phase.LOOK);
        bench.gate.pass();
        bench.dock.lookedOver(Set.of());
        DockState state = bench.answer(UNKNOWN);
        assertThat(state.returns().orElseThrow().unexpected()).hasSize(1);
        assertThat(bench.spool.outbox().next().orElseThrow().kind()).isEqualTo(OutboxItem.Kind.REGISTRATION);
        assertThat(bench.spool.registered()).hasSize(1);
    }

    @Test
    void asksBeforeCheckingInWhatIsNotOnTheList() throws InterruptedException {
        bench.dock.scan(NOT_DUE.value());
        assertThat(bench.notice("dock-not-on-list").phase()).isEqualTo(Phase.READY);
        bench.dock.notice(NoticeAction.CHECK_IN_ANYWAY);
        bench.await("the visual list", s -> s.phase() == Phase.LOOK);
        bench.gate.pass();
        bench.dock.lookedOver(Set.of());
        DockState.Returns returns = bench.answer(NOT_DUE).returns().orElseThrow();
        assertThat(returns.back()).isZero();
        assertThat(returns.unexpected()).singleElement().satisfies(slot -> {
            assertThat(slot.tag()).isEqualTo(NOT_DUE);
            assertThat(slot.state()).isEqualTo(SlotState.SHELF);
        });
    }

    @Test
    void showsEarlierResultOfTagScannedTwiceAndDoublesNothing() throws InterruptedException {
        bench.gate.fail();
        bench.checkIn(FIRST);
        bench.dock.scan(FIRST.value());
        DockState state = bench.notice("dock-already-checked-in");
        assertThat(state.answer().orElseThrow().route()).contains(Route.BENCH);
        assertThat(state.answer().orElseThrow().jobCode().orElseThrow().value()).isEqualTo("J01-00001");
        assertThat(bench.spool.checkIns()).hasSize(1);
        bench.dock.notice(NoticeAction.CHECK_IN_AGAIN);
        bench.await("the visual list", s -> s.phase() == Phase.LOOK);
        bench.gate.pass();
        bench.dock.lookedOver(Set.of());
        DockState again = bench.answer(FIRST);
        assertThat(again.answer().orElseThrow().route()).contains(Route.SHELF);
        assertThat(again.returns().orElseThrow().back()).isEqualTo(1);
    }

    @Test
    void keepsScanMadeDuringASweepForAfterwardsAndDoesNotMixCabinets() throws InterruptedException {
        bench.gate.fail().pass();
        bench.look(FIRST);
        bench.rig.waitInPlayback();
        bench.dock.lookedOver(Set.of());
        bench.rig.awaitPlayback();
        bench.dock.scan(SECOND.value());
        bench.dock.scan(SECOND.value());
        DockState during = bench.notice("dock-scan-queued");
        assertThat(during.cabinet().orElseThrow().tag()).isEqualTo(FIRST);
        assertThat(during.cabinet().orElseThrow().queuedScan()).contains(SECOND);
        bench.rig.goOn();
        bench.await(
                "the queued cabinet",
                s -> s.phase() == Phase.LOOK && s.cabinet().orElseThrow().tag().equals(SECOND));
        bench.dock.lookedOver(Set.of());
        bench.answer(SECOND);
        assertThat(bench.spool.checkIns()).extracting(CheckInBody::tag).containsExactlyInAnyOrder(FIRST, SECOND);
        assertThat(bench.spool.checkIns())
                .filteredOn(c -> c.tag().equals(FIRST))
                .extracting(CheckInBody::route)
                .containsExactly(Route.BENCH);
    }

    @Test
    void forgetsQueuedScanWhenToldTo() throws InterruptedException {
        bench.gate.pass();
        bench.look(FIRST);
        bench.rig.waitInPlayback();
        bench.dock.lookedOver(Set.of());
        bench.rig.awaitPlayback();
        bench.dock.scan(SECOND.value());
        bench.notice("dock-scan-queued");
        bench.dock.notice(NoticeAction.DISMISS);
        bench.await(
                "an empty queue", s -> s.cabinet().orElseThrow().queuedScan().isEmpty());
        bench.rig.goOn();
        bench.answer(FIRST);
        assertThat(bench.dock.state().cabinet().orElseThrow().tag()).isEqualTo(FIRST);
    }

    @Test
    void changesToTheNextCabinetBeforeTheSweepAndSaysTheFirstIsNotCheckedIn() throws InterruptedException {
        bench.look(FIRST);
        DockState state = bench.look(SECOND);
        assertThat(state.scans()).anyMatch(s -> s.outcome().key().equals("dock-left-unfinished"));
        assertThat(state.returns().orElseThrow().models().get(0).slots().get(0).state())
                .isEqualTo(SlotState.NOT_YET);
        assertThat(bench.spool.checkIns()).isEmpty();
    }

    @Test
    void showsListAsItWasAfterARestart() throws InterruptedException {
        bench.gate.fail();
        DockState before = bench.checkIn(FIRST);
        bench.close();
        bench = new DockBench(folder);
        DockState.Returns after = bench.dock.state().returns().orElseThrow();
        assertThat(after.back()).isEqualTo(before.returns().orElseThrow().back());
        assertThat(after.models().get(0).slots().get(0).state()).isEqualTo(SlotState.BENCH);
        bench.dock.scan(FIRST.value());
        bench.notice("dock-already-checked-in");
        bench.gate.fail();
        bench.checkIn(SECOND);
        assertThat(bench.dock
                        .state()
                        .answer()
                        .orElseThrow()
                        .jobCode()
                        .orElseThrow()
                        .value())
                .isEqualTo("J01-00002");
    }

    @Test
    void closesTheListWithWhatIsBackMissingAndUnexpected() throws InterruptedException {
        bench.gate.pass();
        bench.checkIn(FIRST);
        bench.dock.closeList();
        DockState state = bench.notice("dock-list-closed");
        assertThat(state.notice().orElseThrow().text().arguments()).containsExactly("R-1", "1", "3", "2", "0");
        assertThat(bench.sheets)
                .singleElement()
                .satisfies(sheet -> assertThat(sheet.missing()).hasSize(2));
        assertThat(state.returns()).as("a closed list is out of sight").isEmpty();
        bench.dock.notice(NoticeAction.SHEET_AGAIN);
        bench.await("the sheet once more", seen -> bench.sheets.size() == 2);
        bench.notice("dock-list-closed");
        assertThat(bench.sheets.get(1)).isEqualTo(bench.sheets.get(0));
        bench.dock.closeList();
        bench.notice("dock-close-nothing");
        assertThat(bench.sheets).hasSize(2);
    }

    @Test
    void refusesToCloseTheListWhileACabinetIsAtHand() throws InterruptedException {
        bench.look(FIRST);
        bench.dock.closeList();
        bench.notice("dock-close-unfinished");
        assertThat(bench.sheets).isEmpty();
    }
}
