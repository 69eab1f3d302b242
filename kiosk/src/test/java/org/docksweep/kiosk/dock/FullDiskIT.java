package org.docksweep.kiosk.dock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.docksweep.kiosk.dock.SmallHouse.FIRST;
import static org.docksweep.kiosk.dock.SmallHouse.SECOND;

import java.nio.file.Path;
import java.time.Clock;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.docksweep.contract.CheckInBody;
import org.docksweep.fleet.Reasons;
import org.docksweep.judge.Prompt;
import org.docksweep.kiosk.dock.DockState.NoticeAction;
import org.docksweep.kiosk.dock.DockState.Phase;
import org.docksweep.kiosk.spool.OutboxCounts;
import org.docksweep.kiosk.spool.SpoolException;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A disk that is really full, under the spool and under the recordings. */
class FullDiskIT {
    private static final FaultTable TABLE = new FaultTable();
    private static final int DISK_MB = 8;

    @TempDir
    Path folder;

    @AfterAll
    static void print() {
        TABLE.print("FullDiskIT");
    }

    @Test
    void saysSoRecordsNothingByHalvesAndGoesOnWhenThereIsRoom() throws Exception {
        Clock clock = Clock.systemUTC();
        try (SmallDisk disk = SmallDisk.mount(folder.resolve("disk"), DISK_MB);
                FaultService service = new FaultService(clock);
                FaultDock kiosk = new FaultDock(
                        new FaultDock.Setting(disk.folder(), 1, new ScriptedRig(), Optional.empty(), clock), service)) {
            kiosk.gate.pass();
            kiosk.checkIn(FIRST);
            kiosk.awaitSent();
            OutboxCounts before = kiosk.counts();

            disk.fill();
            String recording = recordingNotKept(kiosk);
            assertThat(kiosk.counts()).isEqualTo(before);
            String memory = notStored(kiosk);
            assertThat(kiosk.dock.state().strip().waitingToSend()).isZero();
            assertThat(kiosk.dock.state().phase()).isEqualTo(Phase.READY);

            disk.makeRoom();
            OutboxCounts during = kiosk.counts();
            assertThat(during).as("nothing came and nothing went").isEqualTo(before);
            kiosk.dock.notice(NoticeAction.DISMISS);
            kiosk.gate.pass();
            kiosk.checkIn(SECOND);
            kiosk.awaitSent();
            TABLE.add("disk full under the recordings", recording, before, before, before);
            TABLE.add("disk full under the spool", memory, before, during, kiosk.counts());
            assertThat(service.checkIns()).extracting(CheckInBody::tag).containsExactly(FIRST, SECOND);
        }
    }

    /** The sweep's recording comes first. */
    private static String recordingNotKept(FaultDock kiosk) throws InterruptedException {
        kiosk.gate.pass();
        kiosk.look(SECOND);
        kiosk.dock.lookedOver(Set.of());
        DockState asked = kiosk.await(
                "the prompt to sweep again",
                s -> s.answer().filter(a -> a.prompt() == Prompt.SWEEP_AGAIN).isPresent());
        String seen = Reasons.text(asked.answer().orElseThrow().reason(), Locale.ENGLISH);
        assertThat(seen).contains("could not be kept").contains("Check the disk");
        kiosk.gate.judgements.clear();
        return seen.replaceAll("/\\S*/", "");
    }

    /** A person gives up on it; that is a check-in, too. */
    private static String notStored(FaultDock kiosk) throws InterruptedException {
        kiosk.dock.holdForPerson();
        String seen = kiosk.told("dock-fault-not-stored");
        assertThat(seen).contains("the disk is full").contains("Nothing was recorded");
        assertThat(kiosk.dock.state().answer()).isEmpty();
        return seen.replaceAll("/\\S*/", "");
    }

    @Test
    void opensNotOnAFullDiskAndSaysWhy() throws Exception {
        try (SmallDisk disk = SmallDisk.mount(folder.resolve("disk"), 1)) {
            disk.fill();
            assertThat(org.assertj.core.api.Assertions.catchThrowable(() ->
                            org.docksweep.kiosk.spool.Spool.open(disk.folder().resolve("spool"), Clock.systemUTC())))
                    .isInstanceOf(SpoolException.class)
                    .hasMessageContaining("check the disk");
        }
    }
}
