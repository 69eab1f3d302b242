package org.docksweep.kiosk.screens;

import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.util.Optional;

/**
 * Keys of the window, always the same for the same kind of step. None is a key a scanner types: letters, digits and
 * Enter belong to the scan line.
 */
enum Command {
    /** The one next step of the phase. */
    NEXT("F1", KeyEvent.VK_F1, 0),
    CHOICE_1("F2", KeyEvent.VK_F2, 0),
    CHOICE_2("F3", KeyEvent.VK_F3, 0),
    CHOICE_3("F4", KeyEvent.VK_F4, 0),
    CHOICE_4("F5", KeyEvent.VK_F5, 0),
    CHOICE_5("F6", KeyEvent.VK_F6, 0),
    CHOICE_6("F7", KeyEvent.VK_F7, 0),
    CHOICE_7("F8", KeyEvent.VK_F8, 0),
    PRINT("F9", KeyEvent.VK_F9, 0),
    HOLD("F10", KeyEvent.VK_F10, 0),
    NOTICE_1("F11", KeyEvent.VK_F11, 0),
    NOTICE_2("F12", KeyEvent.VK_F12, 0),
    /** Two keys at once, because it ends the night's list. */
    CLOSE_LIST("Ctrl F9", KeyEvent.VK_F9, InputEvent.CTRL_DOWN_MASK),
    /** Up and down a list. */
    UP("\u2191", KeyEvent.VK_UP, 0),
    DOWN("\u2193", KeyEvent.VK_DOWN, 0),
    STOP("Esc", KeyEvent.VK_ESCAPE, 0),
    /** Two keys at once, because F1 to F12 belong to the page. */
    PAGE_DOCK("Ctrl F1", KeyEvent.VK_F1, InputEvent.CTRL_DOWN_MASK),
    PAGE_BENCH("Ctrl F2", KeyEvent.VK_F2, InputEvent.CTRL_DOWN_MASK),
    PAGE_FLEET("Ctrl F3", KeyEvent.VK_F3, InputEvent.CTRL_DOWN_MASK),
    PAGE_RIG("Ctrl F4", KeyEvent.VK_F4, InputEvent.CTRL_DOWN_MASK),
    /** Who is signed on, lock, sign off. */
    PERSON("Ctrl F5", KeyEvent.VK_F5, InputEvent.CTRL_DOWN_MASK),
    /** The set-up of the kiosk. */
    SET_UP("Ctrl F6", KeyEvent.VK_F6, InputEvent.CTRL_DOWN_MASK),
    /** Begins or ends practice. */
    PRACTICE("Ctrl F7", KeyEvent.VK_F7, InputEvent.CTRL_DOWN_MASK),
    /** Scans what comes off the invented truck. */
    PRACTICE_SCAN("Ctrl F8", KeyEvent.VK_F8, InputEvent.CTRL_DOWN_MASK);

    private static final int MODIFIERS =
            InputEvent.CTRL_DOWN_MASK | InputEvent.ALT_DOWN_MASK | InputEvent.META_DOWN_MASK;

    private final String cap;
    private final int keyCode;
    private final int modifiers;

    Command(String cap, int keyCode, int modifiers) {
        this.cap = cap;
        this.keyCode = keyCode;
        this.modifiers = modifiers;
    }

    /** What is printed on the key. */
    String cap() {
        return cap;
    }

    static Command choice(int index) {
        return values()[CHOICE_1.ordinal() + index];
    }

    /** The command of a key; stop answers to Escape whatever else is held down. */
    static Optional<Command> of(KeyEvent event) {
        if (event.getKeyCode() == KeyEvent.VK_ESCAPE) {
            return Optional.of(STOP);
        }
        for (Command command : values()) {
            if (command.keyCode == event.getKeyCode() && command.modifiers == (event.getModifiersEx() & MODIFIERS)) {
                return Optional.of(command);
            }
        }
        return Optional.empty();
    }
}
