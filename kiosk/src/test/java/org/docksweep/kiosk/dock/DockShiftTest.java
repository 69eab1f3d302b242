package org.docksweep.kiosk.dock;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import org.docksweep.contract.CheckInBody;
import org.docksweep.kiosk.dock.DockState.Phase;
import org.docksweep.kiosk.dock.DockState.SlotState;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A shift ends while the truck is being taken in. */
class DockShiftTest {
    private DockBench bench;

    @BeforeEach
    void opens(@TempDir Path folder) {
        bench = new DockBench(folder);
    }

    @AfterEach
    void closes() {
        bench.close();
    }

    @Test
    void recordsForWhoeverIsSignedOnWhenItIsRecorded() throws Exception {
        bench.gate.pass().pass();
        bench.checkIn(SmallHouse.FIRST);
        bench.look(SmallHouse.SECOND);

        bench.signedOn = "Toma";
        bench.dock.personChanged();

        DockState taken = bench.await(
                "the next person in the strip", s -> s.strip().operator().equals("Toma"));
        assertThat(taken.phase()).as("what was at hand stays").isEqualTo(Phase.LOOK);
        assertThat(taken.cabinet().map(DockState.CabinetAtHand::tag)).contains(SmallHouse.SECOND);
        bench.dock.lookedOver(Set.of());
        bench.answer(SmallHouse.SECOND);
        assertThat(bench.spool.newestCheckIn(SmallHouse.FIRST).map(CheckInBody::operator))
                .contains("Ines");
        assertThat(bench.spool.newestCheckIn(SmallHouse.SECOND).map(CheckInBody::operator))
                .contains("Toma");
    }

    @Test
    void takesAScanFromBeforeAfterTheCabinetAtHand() throws Exception {
        bench.gate.pass();
        bench.look(SmallHouse.FIRST);

        bench.dock.scanNext(SmallHouse.SECOND.value());

        DockState kept = bench.notice("dock-scan-queued");
        assertThat(kept.cabinet().map(DockState.CabinetAtHand::tag)).contains(SmallHouse.FIRST);
        bench.dock.lookedOver(Set.of());
        bench.await(
                "the one that waited",
                s -> s.phase() == Phase.LOOK
                        && s.cabinet().map(DockState.CabinetAtHand::tag).equals(Optional.of(SmallHouse.SECOND)));
        assertThat(bench.spool.newestCheckIn(SmallHouse.FIRST)).isPresent();
    }

    @Test
    void takesAScanFromBeforeAtOnceWhenNothingIsAtHand() throws Exception {
        bench.dock.scanNext(SmallHouse.FIRST.value());

        DockState look = bench.await("its visual list", s -> s.phase() == Phase.LOOK);
        assertThat(look.returns().orElseThrow().models())
                .flatExtracting(DockState.ModelTally::slots)
                .contains(new DockState.Slot(SmallHouse.FIRST, SlotState.AT_HAND));
    }
}
