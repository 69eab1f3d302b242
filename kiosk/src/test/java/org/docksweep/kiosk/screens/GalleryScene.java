package org.docksweep.kiosk.screens;

import java.util.ArrayList;
import java.util.List;
import org.docksweep.kiosk.dock.DockState;

/**
 * A picture of the gallery: a state, and the keys pressed in it.
 *
 * @param name name of the picture
 * @param state state
 * @param pressed keys pressed after it is shown
 */
record GalleryScene(String name, DockState state, List<Command> pressed) {

    static List<GalleryScene> all() {
        List<GalleryScene> scenes = new ArrayList<>();
        SampleStates.all().forEach((name, state) -> scenes.add(new GalleryScene(name, state, List.of())));
        scenes.add(pressed("look-marked", "look", Command.CHOICE_1, Command.CHOICE_4));
        scenes.add(pressed("register", "unknown-tag", Command.NOTICE_1));
        scenes.add(pressed("close-sure", "ready", Command.CLOSE_LIST));
        return scenes;
    }

    private static GalleryScene pressed(String name, String state, Command... keys) {
        return new GalleryScene(name, SampleStates.named(state), List.of(keys));
    }
}
