package org.docksweep.kiosk.rig.audio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The rig in full duplex over a real sound server, with a software load between its output and its input. */
class AudioLoopIT {
    /** Asked of the sound path from 50 Hz to 15 kHz. */
    private static final double TOLERANCE_DB = 0.1;

    /** Where all cores are busy a capture may be torn; the rig says so, and the dock hand sweeps again. */
    private static final int MOST_SWEEPS = 3;

    private static final int RATE_HZ = 48_000;
    /** Float samples and one cut of a few frames. */
    private static final double SHARE_TOLERANCE = 1e-3;

    @TempDir
    Path folder;

    private SoundServer server;

    @BeforeEach
    void startServer() throws IOException, InterruptedException {
        SoundServer.need();
        server = SoundServer.start(folder);
    }

    @AfterEach
    void stopServer() throws InterruptedException {
        if (server != null) {
            server.close();
        }
    }

    @ParameterizedTest(name = "{0}, {1} bit, {2} Hz")
    @CsvSource({"RC, 24, 48000", "RC, 16, 48000", "DRIVER, 24, 48000", "DRIVER, 24, 96000"})
    void measuresAKnownLoad(SoftLoad load, int bits, int rateHz) throws IOException, InterruptedException {
        List<String> said = measure(load, rateHz, 0, "VIMF", "bits=" + bits);

        assertAgrees(said, load, rateHz);
        assertThat(fact(said, "bits")).isEqualTo(Integer.toString(bits));
        System.out.printf(
                "%s, %d bit, %d Hz: worst point %.4f dB, loop %s frames, %s s%n",
                load, bits, rateHz, worstDb(said, load, rateHz), fact(said, "delayFrames"), fact(said, "seconds"));
        assertThat(said).anyMatch(line -> line.startsWith("device default"));
    }

    @Test
    void measuresTheDelayOfTheLoop() throws IOException, InterruptedException {
        // With it the loop is slower than the analysis alone would find.
        int extra = RATE_HZ / 2;

        List<String> said = measure(SoftLoad.RC, RATE_HZ, extra, "VIMF");

        assertThat(Integer.parseInt(fact(said, "delayFrames"))).isGreaterThan(extra);
        assertAgrees(said, SoftLoad.RC, RATE_HZ);
    }

    @Test
    void findsEveryRoleOnItsChannel() throws IOException, InterruptedException {
        List<String> said = measure(
                SoftLoad.DRIVER,
                RATE_HZ,
                0,
                "FIMV",
                "voltageChannel=4",
                "currentChannel=2",
                "microphoneChannel=3",
                "farMicrophoneChannel=1");

        assertAgrees(said, SoftLoad.DRIVER, RATE_HZ);
        double voltage = number(said, "rmsVOLTAGE");
        assertThat(voltage).isGreaterThan(0.1);
        assertThat(number(said, "rmsMICROPHONE") / voltage)
                .isCloseTo(DutBridge.MICROPHONE_SHARE, within(SHARE_TOLERANCE));
        assertThat(number(said, "rmsFAR_MICROPHONE") / voltage).isCloseTo(DutBridge.FAR_SHARE, within(SHARE_TOLERANCE));
    }

    @Test
    void stopsWhenSomebodyTurnedTheAmplifierUp() throws IOException, InterruptedException {
        try (Program load = load(SoftLoad.RC, RATE_HZ, 1.9, 0, "VIMF");
                Program rig = rig("measure", RATE_HZ)) {
            assertThat(fact(rig.awaitEnd(), "failed")).startsWith("REFUSED audio-too-many-volts");
        }
    }

    @Test
    void fallsSilentWhenStopped() throws IOException, InterruptedException {
        try (SinkWatch watch = new SinkWatch(server.recorder("out" + RATE_HZ, RATE_HZ));
                Program load = load(SoftLoad.RC, RATE_HZ, 1, 0, "VIMF");
                Program rig = rig("stop", RATE_HZ, "bufferMs=100")) {
            List<String> said = rig.awaitEnd();
            assertThat(fact(said, "failed")).startsWith("STOPPED rig-stopped");
            long lastSoundNs = watch.awaitSilence(RATE_HZ);
            assertThat(watch.heard()).isTrue();
            String[] stopped = fact(said, "stoppedNs").split(" ");
            System.out.printf(
                    "stop to silence at the sink: %.1f ms; stop() itself: %.1f ms%n",
                    (lastSoundNs - Long.parseLong(stopped[0])) / 1e6, Long.parseLong(stopped[1]) / 1e6);
        }
    }

    @Test
    void saysThatTheDeviceIsLostWhenTheServerDies() throws IOException, InterruptedException {
        assertThat(lostBy(SoundServer::kill)).startsWith("DEVICE_LOST");
    }

    @Test
    void saysThatTheDeviceIsLostWhenItsSinkGoes() throws IOException, InterruptedException {
        assertThat(lostBy(s -> assertThat(s.control("unload-module", "module-null-sink"))
                        .isZero()))
                .startsWith("DEVICE_LOST");
    }

    @Test
    void saysThatTheDeviceIsLostWhenTheServerHangs() throws IOException, InterruptedException {
        assertThat(lostBy(SoundServer::freeze)).startsWith("DEVICE_LOST");
    }

    @Test
    void refusesWhenThereIsNoDevice() throws IOException, InterruptedException {
        server.kill();
        try (Program rig = rig("measure", RATE_HZ)) {
            assertThat(fact(rig.awaitEnd(), "failed")).startsWith("REFUSED audio-no-input");
        }
    }

    @Test
    void namesTheDevicesWhenTheOneAskedForIsNotThere() throws IOException, InterruptedException {
        try (Program rig = rig("measure", RATE_HZ, "playMixer=Harbour 4")) {
            assertThat(fact(rig.awaitEnd(), "failed"))
                    .startsWith("REFUSED audio-device-unknown")
                    .contains("Harbour 4", "default");
        }
    }

    private interface Mishap {
        void happen(SoundServer server) throws IOException, InterruptedException;
    }

    private String lostBy(Mishap mishap) throws IOException, InterruptedException {
        try (Program load = load(SoftLoad.RC, RATE_HZ, 1, 0, "VIMF");
                Program rig = rig("measure", RATE_HZ)) {
            rig.awaitLine();
            long happenedNs = System.nanoTime();
            mishap.happen(server);
            List<String> said = rig.awaitEnd();
            System.out.printf(
                    "%s, %.1f s after it happened%n", fact(said, "failed"), (System.nanoTime() - happenedNs) / 1e9);
            return fact(said, "failed");
        }
    }

    private List<String> measure(SoftLoad load, int rateHz, int extraFrames, String order, String... settings)
            throws IOException, InterruptedException {
        for (int sweep = 1; ; sweep++) {
            try (Program device = load(load, rateHz, 1, extraFrames, order);
                    Program rig = rig("measure", rateHz, settings)) {
                List<String> said = rig.awaitEnd();
                if (sweep == MOST_SWEEPS || said.stream().noneMatch(line -> line.startsWith("issue TORN"))) {
                    return said;
                }
                System.out.println("a torn capture was found, and is swept again");
            }
        }
    }

    private Program load(SoftLoad load, int rateHz, double gain, int extraFrames, String order)
            throws IOException, InterruptedException {
        List<String> arguments = List.of(
                load.name(), Integer.toString(rateHz), Double.toString(gain), Integer.toString(extraFrames), order);
        Program device =
                new Program(server.java(DutBridge.class, "in" + rateHz, "out" + rateHz, arguments), DutBridge.READY);
        device.awaitLine();
        return device;
    }

    private Program rig(String what, int rateHz, String... more) throws IOException {
        Map<String, String> settings = new TreeMap<>(Map.of(
                "sampleRateHz", Integer.toString(rateHz),
                "captureChannels", "4",
                "voltsPerFullScale", Double.toString(DutBridge.VOLTS_FULL_SCALE),
                "voltageFullScale", Double.toString(DutBridge.VOLTS_FULL_SCALE),
                "currentFullScale", Double.toString(DutBridge.AMPERES_FULL_SCALE),
                "microphoneChannel", "3",
                "microphoneFullScale", "1",
                "farMicrophoneFullScale", "1",
                // A build server's cores are busy with other things.
                "bufferMs", "200"));
        for (String setting : more) {
            String[] pair = setting.split("=", 2);
            settings.put(pair[0], pair[1]);
        }
        List<String> arguments = new ArrayList<>(List.of(what));
        settings.forEach((key, value) -> arguments.add(key + "=" + value));
        return new Program(server.java(RigProcess.class, "out" + rateHz, "in" + rateHz, arguments), "playing");
    }

    private void assertAgrees(List<String> said, SoftLoad load, int rateHz) throws IOException {
        assertThat(said).as("errors: %s", server.errors()).noneMatch(line -> line.startsWith("issue"));
        assertThat(worstDb(said, load, rateHz)).as("worst deviation in dB").isLessThan(TOLERANCE_DB);
    }

    private static double worstDb(List<String> said, SoftLoad load, int rateHz) {
        double worst = 0;
        int points = 0;
        for (String line : said) {
            String[] words = line.split(" ");
            double frequencyHz = words[0].equals("z") ? Double.parseDouble(words[1]) : 0;
            if (frequencyHz >= 50 && frequencyHz <= 15_000) {
                double truth = load.truth(frequencyHz, rateHz).norm();
                worst = Math.max(worst, Math.abs(20 * Math.log10(Double.parseDouble(words[2]) / truth)));
                points++;
            }
        }
        assertThat(points).as("points from 50 Hz to 15 kHz in %s", said).isGreaterThan(100);
        return worst;
    }

    private static double number(List<String> said, String name) {
        return Double.parseDouble(fact(said, name));
    }

    private static String fact(List<String> said, String name) {
        return Program.fact(said, name)
                .orElseThrow(() -> new AssertionError("the program did not say " + name + ", but " + said));
    }
}
