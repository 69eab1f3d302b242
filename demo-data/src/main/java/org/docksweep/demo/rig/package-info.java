/** The virtual rig: amplifier, sense resistor, lead, microphone, hall and converter, rendered into captures. */
package org.docksweep.demo.rig;
