/** What the kiosk lets be heard of an answer. It knows the dock's states, and a loudspeaker that is not the rig's. */
package org.docksweep.kiosk.tones;
