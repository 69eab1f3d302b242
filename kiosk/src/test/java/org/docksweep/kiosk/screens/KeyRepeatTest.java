package org.docksweep.kiosk.screens;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.event.KeyEvent;
import javax.swing.JPanel;
import org.junit.jupiter.api.Test;

class KeyRepeatTest {
    private final KeyRepeat repeat = new KeyRepeat();

    private boolean press(long whenMs) {
        return repeat.begins(event(KeyEvent.KEY_PRESSED, whenMs));
    }

    private boolean release(long whenMs) {
        return repeat.begins(event(KeyEvent.KEY_RELEASED, whenMs));
    }

    private static KeyEvent event(int id, long whenMs) {
        return new KeyEvent(new JPanel(), id, whenMs, 0, KeyEvent.VK_F1, KeyEvent.CHAR_UNDEFINED);
    }

    @Test
    void takesAPressAndThePressAfterItsRelease() {
        assertThat(press(100)).isTrue();
        assertThat(release(180)).isFalse();
        assertThat(press(300)).isTrue();
    }

    @Test
    void refusesPressesOfAKeyThatIsHeld() {
        assertThat(press(100)).isTrue();
        assertThat(press(600)).isFalse();
        assertThat(press(640)).isFalse();
    }

    @Test
    void refusesAReleaseAndPressAtTheSameInstant() {
        assertThat(press(100)).isTrue();
        release(600);
        assertThat(press(600)).isFalse();
        release(640);
        assertThat(press(640)).isFalse();
    }

    @Test
    void takesThePressAfterTheWindowWasLeft() {
        press(100);
        repeat.forget();

        assertThat(press(900)).isTrue();
    }
}
