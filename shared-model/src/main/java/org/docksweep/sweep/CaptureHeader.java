package org.docksweep.sweep;

import static org.docksweep.fleet.Require.inRange;
import static org.docksweep.fleet.Require.text;

import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.docksweep.fleet.Require;
import org.docksweep.fleet.TestPointKind;

/**
 * Everything known of a capture besides its samples: the sidecar of a recording. It says nothing of which cabinet was
 * connected or what is wrong with it.
 *
 * @param capturedAt when the capture began
 * @param rigId rig that made it
 * @param testPointKind what was connected: terminals, line input or bare driver
 * @param channels channels in the order of the samples; each role at most once
 * @param plan what was played; its sample rate is the capture's
 * @param ambientCelsius air temperature at the dock, -30 to 60, or null when not known
 */
public record CaptureHeader(
        Instant capturedAt,
        String rigId,
        TestPointKind testPointKind,
        List<CaptureChannel> channels,
        SweepPlan plan,
        Double ambientCelsius) {

    public CaptureHeader {
        if (capturedAt == null) {
            throw new IllegalArgumentException("capture: capturedAt is missing");
        }
        text("capture rigId", rigId);
        if (testPointKind == null) {
            throw new IllegalArgumentException("capture: testPointKind must be TERMINALS, LINE_INPUT or BARE_DRIVER");
        }
        channels = Require.notEmpty("capture channels", channels);
        Set<ChannelRole> roles = new HashSet<>();
        for (CaptureChannel channel : channels) {
            if (!roles.add(channel.role())) {
                throw new IllegalArgumentException("capture: two channels have the role " + channel.role());
            }
        }
        if (plan == null) {
            throw new IllegalArgumentException("capture: plan is missing");
        }
        if (ambientCelsius != null) {
            inRange("capture ambientCelsius", ambientCelsius, -30, 60);
        }
    }

    /**
     * Index of the channel with a role.
     *
     * @param role role looked for
     * @return index from 0, or -1 when the capture has no such channel
     */
    public int indexOf(ChannelRole role) {
        for (int i = 0; i < channels.size(); i++) {
            if (channels.get(i).role() == role) {
                return i;
            }
        }
        return -1;
    }
}
