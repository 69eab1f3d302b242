package org.docksweep.sweep;

import org.docksweep.fleet.Require;

/**
 * One channel of a capture.
 *
 * @param role what it holds
 * @param unitsPerFullScale nominal factor from digital full scale (1.0) to the SI unit of the role: volts, amperes or
 *     pascals; greater than 0
 */
public record CaptureChannel(ChannelRole role, double unitsPerFullScale) {
    public CaptureChannel {
        if (role == null) {
            throw new IllegalArgumentException(
                    "channel role must be one of VOLTAGE, CURRENT, MICROPHONE, FAR_MICROPHONE");
        }
        Require.positive("channel " + role + " unitsPerFullScale", unitsPerFullScale);
    }
}
