/**
 * What the people at the dock see. The window shows one {@link org.docksweep.kiosk.dock.DockState} at a time and holds
 * no knowledge of its own; what a person does goes to {@link org.docksweep.kiosk.dock.DockActions}.
 */
package org.docksweep.kiosk.screens;
