package org.docksweep.kiosk.dock;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;

/**
 * A print server of CUPS of its own, with folders and port of its own, whose printer keeps every job as the PostScript that came. Its
 * back end speaks as CUPS's page backend(7) says: it has no paper while a file says so, and stops its queue then.
 */
final class PrintServer implements AutoCloseable {
    /** Set to true where a missing print server is a failure. */
    private static final String REQUIRED = "docksweep.require.printing";

    static final String QUEUE = "TAG";
    private static final Path PROGRAMS = Path.of("/usr/lib/cups");
    private static final long BOUND_S = 20;
    private static final String BACKEND = """
            #!/bin/sh
            D=${DEVICE_URI#keep:}
            [ $# -eq 0 ] && { echo 'direct keep "Unknown" "Keeps jobs"'; exit 0; }
            if [ -e "$D/no-paper" ]; then
              echo "STATE: +media-empty-error" >&2
              echo "ERROR: Out of paper" >&2
              exit 4
            fi
            echo "STATE: -media-empty-error" >&2
            cat ${6:+"$6"} > "$D/out/$1.part" && mv "$D/out/$1.part" "$D/out/$1.ps"
            """;

    private final Path folder;
    private final int port;
    private final Process daemon;

    private PrintServer(Path folder, int port, Process daemon) {
        this.folder = folder;
        this.port = port;
        this.daemon = daemon;
    }

    /** Printing needs the server, its lpr, which Java calls, and an interpreter to look at what came. */
    static void need() {
        boolean there = onPath("cupsd") && onPath("lpr") && onPath("lpadmin") && onPath("gs");
        String words = "packages cups, cups-bsd and ghostscript";
        if (Boolean.getBoolean(REQUIRED)) {
            assertThat(there)
                    .as("a print server is required (-D%s=true), but there is none; install the %s", REQUIRED, words)
                    .isTrue();
        }
        if (!there) {
            System.out.println("SKIPPED: no print server; install the " + words);
        }
        Assumptions.assumeTrue(there, "skipped: no print server. Install the " + words + " to test printing.");
    }

    private static boolean onPath(String program) {
        return Arrays.stream((System.getenv("PATH") + File.pathSeparator + "/usr/sbin").split(File.pathSeparator))
                .anyMatch(folder -> Files.isExecutable(Path.of(folder, program)));
    }

    static PrintServer start(Path folder) throws IOException, InterruptedException {
        for (String name : List.of("etc/ppd", "run/certs", "cache", "spool/tmp", "bin/backend", "out", "log")) {
            Files.createDirectories(folder.resolve(name));
        }
        try (DirectoryStream<Path> programs = Files.newDirectoryStream(PROGRAMS)) {
            for (Path program : programs) {
                if (!program.endsWith("backend")) {
                    Files.createSymbolicLink(folder.resolve("bin").resolve(program.getFileName()), program);
                }
            }
        }
        Path backend = Files.writeString(folder.resolve("bin/backend/keep"), BACKEND);
        Files.setPosixFilePermissions(backend, PosixFilePermissions.fromString("rwx------"));
        int port;
        try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            port = free.getLocalPort();
        }
        Files.writeString(folder.resolve("files.conf"), """
                ServerRoot %1$s/etc
                StateDir %1$s/run
                CacheDir %1$s/cache
                RequestRoot %1$s/spool
                TempDir %1$s/spool/tmp
                ServerBin %1$s/bin
                AccessLog %1$s/log/access
                ErrorLog %1$s/log/error
                PageLog %1$s/log/page
                """.formatted(folder));
        Files.writeString(folder.resolve("cupsd.conf"), """
                Listen 127.0.0.1:%d
                Browsing No
                DefaultAuthType None
                WebInterface No
                <Location />
                  Order allow,deny
                  Allow all
                </Location>
                <Policy default>
                  <Limit All>
                    Order deny,allow
                    Allow all
                  </Limit>
                </Policy>
                """.formatted(port));
        Process daemon = new ProcessBuilder(
                        "/usr/sbin/cupsd",
                        "-f",
                        "-c",
                        folder.resolve("cupsd.conf").toString(),
                        "-s",
                        folder.resolve("files.conf").toString())
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("log/daemon").toFile())
                .start();
        PrintServer server = new PrintServer(folder, port, daemon);
        long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(BOUND_S);
        while (!server.says("lpstat", "-r").contains("is running")) {
            if (!daemon.isAlive() || System.nanoTime() > until) {
                daemon.destroyForcibly();
                throw new AssertionError(
                        "the print server did not come up: " + Files.readString(folder.resolve("log/daemon")));
            }
            daemon.waitFor(50, TimeUnit.MILLISECONDS);
        }
        server.makeQueue();
        return server;
    }

    void makeQueue() throws IOException, InterruptedException {
        says("/usr/sbin/lpadmin", "-p", QUEUE, "-E", "-v", "keep:" + folder, "-m", "raw");
    }

    /** The printer is taken off the machine. */
    void removeQueue() throws IOException, InterruptedException {
        says("/usr/sbin/lpadmin", "-x", QUEUE);
    }

    void takePaperOut() throws IOException {
        Files.createFile(folder.resolve("no-paper"));
    }

    void putPaperIn() throws IOException, InterruptedException {
        Files.delete(folder.resolve("no-paper"));
        says("/usr/sbin/cupsenable", QUEUE);
    }

    /** Waits until a job has stopped the queue. */
    void awaitStopped() throws IOException, InterruptedException {
        long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(BOUND_S);
        while (!says("lpstat", "-p", QUEUE).contains("disabled")) {
            assertThat(System.nanoTime()).as("the queue never stopped").isLessThan(until);
            daemon.waitFor(50, TimeUnit.MILLISECONDS);
        }
    }

    void refuseJobs() throws IOException, InterruptedException {
        says("/usr/sbin/cupsreject", QUEUE);
    }

    void acceptJobs() throws IOException, InterruptedException {
        says("/usr/sbin/cupsaccept", QUEUE);
    }

    /** Environment of a program that shall print here. */
    String address() {
        return "127.0.0.1:" + port;
    }

    /** Waits for the so-and-so-many-th job that arrived, and gives its file. */
    Path job(int number) throws IOException, InterruptedException {
        long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(BOUND_S);
        List<Path> jobs = jobs();
        while (jobs.size() < number) {
            assertThat(System.nanoTime()).as("job %d of %s", number, jobs).isLessThan(until);
            daemon.waitFor(50, TimeUnit.MILLISECONDS);
            jobs = jobs();
        }
        return jobs.get(number - 1);
    }

    List<Path> jobs() throws IOException {
        try (var files = Files.list(folder.resolve("out"))) {
            return files.filter(f -> f.toString().endsWith(".ps"))
                    .sorted(java.util.Comparator.comparingInt(
                            f -> Integer.parseInt(f.getFileName().toString().replace(".ps", ""))))
                    .toList();
        }
    }

    private String says(String... command) throws IOException, InterruptedException {
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
        builder.environment().put("CUPS_SERVER", address());
        builder.environment().put("LC_ALL", "C");
        Process process = builder.start();
        String words = new String(process.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
        assertThat(process.waitFor(BOUND_S, TimeUnit.SECONDS))
                .as(String.join(" ", command))
                .isTrue();
        return words;
    }

    @Override
    public void close() {
        daemon.destroy();
        try {
            if (!daemon.waitFor(BOUND_S, TimeUnit.SECONDS)) {
                daemon.destroyForcibly();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        // What is linked to is not ours to delete with the folder.
        File[] links = folder.resolve("bin").toFile().listFiles(f -> Files.isSymbolicLink(f.toPath()));
        Arrays.stream(links == null ? new File[0] : links).forEach(File::delete);
    }
}
