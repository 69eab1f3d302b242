package org.docksweep.kiosk.night;

import java.awt.AWTException;
import java.awt.Robot;
import java.awt.event.KeyEvent;

/** A keyboard, or a scanner that types like one. */
final class Keyboard {
    /** A scanner that types is about this fast; common practice, no source. */
    private static final int KEY_MS = 5;

    private final Robot robot;

    Keyboard() throws AWTException {
        robot = new Robot();
        robot.setAutoDelay(KEY_MS);
    }

    /** Types a text and Enter. */
    void type(String text) {
        for (char c : text.toCharArray()) {
            boolean shift = Character.isUpperCase(c);
            if (shift) {
                robot.keyPress(KeyEvent.VK_SHIFT);
            }
            press(KeyEvent.getExtendedKeyCodeForChar(Character.toLowerCase(c)));
            if (shift) {
                robot.keyRelease(KeyEvent.VK_SHIFT);
            }
        }
        press(KeyEvent.VK_ENTER);
    }

    /** Presses the key with a cap, for example {@code F9} or {@code Ctrl F9}. */
    void pressCap(String cap) {
        boolean control = cap.startsWith("Ctrl ");
        if (control) {
            robot.keyPress(KeyEvent.VK_CONTROL);
        }
        press(KeyEvent.VK_F1 + Integer.parseInt(cap.substring(cap.indexOf('F') + 1)) - 1);
        if (control) {
            robot.keyRelease(KeyEvent.VK_CONTROL);
        }
    }

    void press(int keyCode) {
        robot.keyPress(keyCode);
        robot.keyRelease(keyCode);
    }
}
