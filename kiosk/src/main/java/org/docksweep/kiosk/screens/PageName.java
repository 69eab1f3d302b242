package org.docksweep.kiosk.screens;

/** The pages a window can have, in the order of their keys. */
enum PageName {
    /** Taking cabinets in. */
    DOCK(Command.PAGE_DOCK),
    /** Repairing. */
    BENCH(Command.PAGE_BENCH),
    /** The cabinets of the house and their histories. */
    FLEET(Command.PAGE_FLEET),
    /** Setting up, calibrating and checking the rig. */
    RIG(Command.PAGE_RIG);

    private final Command command;

    PageName(Command command) {
        this.command = command;
    }

    /** Key that brings the page up. */
    Command command() {
        return command;
    }
}
