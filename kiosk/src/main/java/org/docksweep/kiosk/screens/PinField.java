package org.docksweep.kiosk.screens;

import java.util.function.Consumer;
import javax.swing.BorderFactory;
import javax.swing.JPasswordField;

/** Takes the place of the scan line while a PIN is typed: shows dots, and is never copied from. */
final class PinField extends JPasswordField {
    private static final long serialVersionUID = 1;

    PinField(Sizes sizes, Texts texts, Consumer<String> typed) {
        setFont(sizes.bold(36));
        setBorder(BorderFactory.createCompoundBorder(
                BorderFactory.createLineBorder(Tone.ATTENTION.ink(), sizes.px(3)),
                BorderFactory.createEmptyBorder(0, sizes.px(16), 0, sizes.px(16))));
        setFocusTraversalKeysEnabled(false);
        getAccessibleContext().setAccessibleName(texts.say("fleet.pin"));
        addActionListener(e -> {
            String text = new String(getPassword());
            setText("");
            if (!text.isBlank()) {
                typed.accept(text);
            }
        });
    }

    /** Says what is typed here now. */
    void ask(String what) {
        getAccessibleContext().setAccessibleName(what);
    }
}
