package org.docksweep.kiosk.rig.audio;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.LinkedBlockingQueue;
import org.docksweep.kiosk.rig.RigDesk;
import org.docksweep.kiosk.rig.RigDeskState;
import org.docksweep.kiosk.rig.RigStation;
import org.docksweep.kiosk.rig.StudyCabinet;
import org.docksweep.sweep.RigException;

/**
 * A calibration walk on a real sound path, run as a process of its own because the sound system reads its environment only
 * at start. Arguments: folder of the rig books, then settings as NAME=VALUE. Every line on its input measures the step at
 * hand; it says the key of what came of it. The end of its input ends it.
 */
final class WalkProcess {
    private WalkProcess() {}

    public static void main(String[] arguments) throws RigException, IOException, InterruptedException {
        Map<String, String> settings = new HashMap<>();
        for (int i = 1; i < arguments.length; i++) {
            String[] setting = arguments[i].split("=", 2);
            settings.put(setting[0], setting[1]);
        }
        try (RigStation station = RigStation.open(
                        Path.of(arguments[0]), "audio", settings, () -> "A. Person", Clock.systemUTC());
                RigDesk desk = station.desk(ZoneOffset.UTC, StudyCabinet.Finder.NONE)) {
            LinkedBlockingQueue<RigDeskState> states = new LinkedBlockingQueue<>();
            desk.addListener(states::add);
            desk.calibrate();
            states.take();
            System.out.println("ready");
            BufferedReader input = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
            for (String line = input.readLine(); line != null; line = input.readLine()) {
                states.clear();
                desk.measure();
                RigDeskState state = states.take();
                boolean begun = false;
                while (!begun || state.sounding()) {
                    begun |= state.sounding();
                    state = states.take();
                }
                System.out.println("said " + state.message().orElseThrow().words());
            }
        }
    }
}
