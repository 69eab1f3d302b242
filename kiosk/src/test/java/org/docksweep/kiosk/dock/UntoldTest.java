package org.docksweep.kiosk.dock;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.docksweep.fleet.Reason;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.dock.DockState.Notice;
import org.docksweep.kiosk.dock.DockState.NoticeAction;
import org.junit.jupiter.api.Test;

class UntoldTest {
    private final Untold untold = new Untold();

    @Test
    void tellsARefusalAgainThatAnotherNoticePushedAwayBeforeAnybodyAnsweredIt() {
        untold.parked("The cabinet was retired meanwhile.");
        untold.parked("Its recording belongs to no check-in.");
        Notice shown = untold.next().orElseThrow().notice();

        untold.again(shown);

        assertThat(untold.next().orElseThrow().notice()).isEqualTo(shown);
        assertThat(untold.next().orElseThrow().notice()).isNotEqualTo(shown);
        assertThat(untold.next()).isEmpty();
    }

    @Test
    void tellsNothingElseAgain() {
        untold.again(new Notice(
                ReadingState.OK,
                Reason.of("dock-list-closed", "R-1", "2", "2", "0", "0"),
                List.of(NoticeAction.DISMISS)));

        assertThat(untold.next()).isEmpty();
    }
}
