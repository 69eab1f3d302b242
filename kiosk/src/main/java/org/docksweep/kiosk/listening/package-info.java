/** Lets a person hear what a microphone heard besides the sweep: an output that is not the rig's, a safe level, files. */
package org.docksweep.kiosk.listening;
