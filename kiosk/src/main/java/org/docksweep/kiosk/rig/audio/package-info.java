/** The rig on a real audio interface: plays and captures in full duplex through the sound system of the Java runtime. */
package org.docksweep.kiosk.rig.audio;
