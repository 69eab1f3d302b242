package org.docksweep.kiosk.rig.audio;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;

/**
 * A private sound server with software sinks. Null sinks play in real time and bit exactly only with
 * {@code norewinds=1}; with remixing off, channels are matched by name, so the sinks have the names Java uses.
 */
final class SoundServer implements AutoCloseable {
    /** Set to true where a missing sound server is a failure. */
    private static final String REQUIRED = "docksweep.require.sound";

    private static final List<Integer> RATES_HZ = List.of(48_000, 96_000);
    private static final long BOUND_S = 20;

    private final Path folder;
    private final Process daemon;

    private SoundServer(Path folder, Process daemon) {
        this.folder = folder;
        this.daemon = daemon;
    }

    /** Tests over a sound server need its programs and the bridge from Java's sound system to it. */
    static void need() throws IOException {
        boolean there = onPath("pulseaudio") && onPath("pactl") && onPath("parec") && bridge();
        String words = "packages pulseaudio, pulseaudio-utils and libasound2-plugins";
        if (Boolean.getBoolean(REQUIRED)) {
            assertThat(there)
                    .as("a sound server is required (-D%s=true), but there is none; install the %s", REQUIRED, words)
                    .isTrue();
        }
        if (!there) {
            System.out.println("SKIPPED: no sound server; install the " + words);
        }
        Assumptions.assumeTrue(there, "skipped: no sound server. Install the " + words + " to test the sound path.");
    }

    private static boolean onPath(String program) {
        return Arrays.stream(System.getenv("PATH").split(File.pathSeparator))
                .anyMatch(folder -> Files.isExecutable(Path.of(folder, program)));
    }

    private static boolean bridge() throws IOException {
        Path libraries = Path.of("/usr/lib");
        if (!Files.isDirectory(libraries)) {
            return false;
        }
        try (DirectoryStream<Path> found = Files.newDirectoryStream(libraries)) {
            for (Path library : found) {
                if (Files.exists(library.resolve("alsa-lib/libasound_module_pcm_pulse.so"))) {
                    return true;
                }
            }
        }
        return false;
    }

    /**
     * Starts a server.
     *
     * @param folder new folder, with a short path because of sockets
     * @return the running server
     */
    static SoundServer start(Path folder) throws IOException, InterruptedException {
        StringBuilder modules = new StringBuilder(".fail\nload-module module-native-protocol-unix\n");
        for (int rateHz : RATES_HZ) {
            modules.append(sink("out" + rateHz, rateHz, 2, "front-left,front-right"));
            modules.append(sink("in" + rateHz, rateHz, 4, "front-left,front-right,rear-left,rear-right"));
        }
        Files.writeString(folder.resolve("default.pa"), modules);
        Files.writeString(folder.resolve("daemon.conf"), """
                default-sample-format = s32le
                default-sample-rate = 48000
                alternate-sample-rate = 48000
                avoid-resampling = yes
                enable-remixing = no
                flat-volumes = no
                exit-idle-time = -1
                high-priority = no
                realtime-scheduling = no
                """);
        Files.writeString(folder.resolve("asound.conf"), """
                </usr/share/alsa/alsa.conf>
                pcm.!default { type asym
                  playback.pcm { type pulse }
                  capture.pcm  { type pulse } }
                ctl.!default { type pulse }
                """);
        Files.createDirectories(folder.resolve("run"));
        Files.createDirectories(folder.resolve("state"));
        Map<String, String> environment = new LinkedHashMap<>(environment(folder));
        environment.put("PULSE_CONFIG", folder.resolve("daemon.conf").toString());
        Process daemon = process(
                        environment,
                        folder,
                        "pulseaudio",
                        "-n",
                        "-F",
                        folder.resolve("default.pa").toString(),
                        "--daemonize=no",
                        "--use-pid-file=no",
                        "--exit-idle-time=-1",
                        "--disallow-exit",
                        "--realtime=no",
                        "--high-priority=no",
                        "--log-target=file:" + folder.resolve("server.log"))
                .start();
        SoundServer server = new SoundServer(folder, daemon);
        long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(BOUND_S);
        while (server.control("info") != 0) {
            if (!daemon.isAlive() || System.nanoTime() > until) {
                daemon.destroyForcibly();
                throw new AssertionError(
                        "the sound server did not come up: " + Files.readString(folder.resolve("server.log")));
            }
            daemon.waitFor(100, TimeUnit.MILLISECONDS);
        }
        return server;
    }

    private static String sink(String name, int rateHz, int channels, String map) {
        return "load-module module-null-sink sink_name=" + name + " format=s32le rate=" + rateHz + " channels="
                + channels + " channel_map=" + map + " norewinds=1\n";
    }

    private static Map<String, String> environment(Path folder) {
        return Map.of(
                "PULSE_RUNTIME_PATH", folder.resolve("run").toString(),
                "PULSE_STATE_PATH", folder.resolve("state").toString(),
                "PULSE_SERVER", "unix:" + folder.resolve("run/native"),
                "ALSA_CONFIG_PATH", folder.resolve("asound.conf").toString());
    }

    private static ProcessBuilder process(Map<String, String> environment, Path folder, String... command) {
        ProcessBuilder builder = new ProcessBuilder(command);
        builder.environment().putAll(environment);
        builder.redirectError(
                ProcessBuilder.Redirect.appendTo(folder.resolve("errors.log").toFile()));
        return builder;
    }

    /** Runs the server's control program and waits for it. */
    int control(String... arguments) throws IOException, InterruptedException {
        String[] command = new String[arguments.length + 1];
        command[0] = "pactl";
        System.arraycopy(arguments, 0, command, 1, arguments.length);
        Process process = process(environment(folder), folder, command)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        if (!process.waitFor(BOUND_S, TimeUnit.SECONDS)) {
            process.destroyForcibly();
            throw new AssertionError("pactl did not answer");
        }
        return process.exitValue();
    }

    /** Prepares a program that records what arrives at a sink, as raw 32-bit frames of two channels. */
    ProcessBuilder recorder(String sink, int rateHz) {
        return process(
                environment(folder),
                folder,
                "parec",
                "--raw",
                "--device=" + sink + ".monitor",
                "--format=s32le",
                "--channels=2",
                "--channel-map=front-left,front-right",
                "--rate=" + rateHz,
                "--latency-msec=5");
    }

    /** Prepares a Java program of the tests that plays to one sink and captures from another's monitor. */
    ProcessBuilder java(Class<?> program, String sink, String sourceSink, List<String> arguments) {
        Map<String, String> environment = new LinkedHashMap<>(environment(folder));
        environment.put("PULSE_SINK", sink);
        environment.put("PULSE_SOURCE", sourceSink + ".monitor");
        String[] command = new String[arguments.size() + 6];
        command[0] = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        command[1] = "-Djava.awt.headless=true";
        command[2] = "-XX:TieredStopAtLevel=1";
        command[3] = "-cp";
        command[4] = System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
        command[5] = program.getName();
        for (int i = 0; i < arguments.size(); i++) {
            command[6 + i] = arguments.get(i);
        }
        return process(environment, folder, command);
    }

    /** What the programs complained of, for failure texts. */
    String errors() throws IOException {
        Path log = folder.resolve("errors.log");
        return Files.exists(log) ? Files.readString(log) : "";
    }

    void kill() throws InterruptedException {
        daemon.destroyForcibly();
        daemon.waitFor();
    }

    /** Lets the server hang, as a driver does that waits for a device. */
    void freeze() throws IOException, InterruptedException {
        Process kill = new ProcessBuilder("kill", "-STOP", Long.toString(daemon.pid())).start();
        assertThat(kill.waitFor()).as("kill -STOP").isZero();
    }

    @Override
    public void close() throws InterruptedException {
        kill();
    }
}
