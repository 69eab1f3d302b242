package org.docksweep.kiosk.service;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.docksweep.contract.ApiPaths;

/**
 * The service as a child process of this one, on a free loopback port, with its data in a given folder. Started again
 * on the same folder it goes on with the same data, also after {@link #kill()}.
 */
public final class ChildService implements AutoCloseable {
    /** Longest wait until it is ready; a busy machine with two cores needs about a tenth of this. */
    public static final Duration READY_WITHIN = Duration.ofSeconds(120);

    private static final Duration STOP_WITHIN = Duration.ofSeconds(15);
    private static final long POLL_MS = 50;

    private final Process process;
    private final Thread stopAtExit;
    private final URI address;

    private ChildService(Process process, URI address) {
        this.process = process;
        this.address = address;
        this.stopAtExit = new Thread(process::destroyForcibly, "child-service-stop");
        Runtime.getRuntime().addShutdownHook(stopAtExit);
    }

    /**
     * Starts the service and waits until it is ready.
     *
     * @param executableJar the service's executable jar
     * @param folder its data folder; made if needed; its log is {@code service.log} in there
     * @param token token it accepts from this kiosk
     * @return the running service
     * @throws IOException if it cannot be started or is not ready in time; says where its log is
     */
    public static ChildService start(Path executableJar, Path folder, String token) throws IOException {
        return start(executableJar, folder, token, Map.of());
    }

    /**
     * Starts the service with further settings.
     *
     * @param executableJar the service's executable jar
     * @param folder its data folder
     * @param token token it accepts from this kiosk
     * @param settings further settings by their property names
     * @return the running service
     * @throws IOException if it cannot be started or is not ready in time
     */
    public static ChildService start(Path executableJar, Path folder, String token, Map<String, String> settings)
            throws IOException {
        if (!Files.isRegularFile(executableJar)) {
            throw new IOException("the service's executable jar is not at " + executableJar.toAbsolutePath()
                    + "; build it with: mvn -pl service -am package");
        }
        Files.createDirectories(folder);
        Path portFile = folder.resolve("service.port").toAbsolutePath();
        Files.deleteIfExists(portFile);
        Path log = folder.resolve("service.log");
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-Xmx512m"));
        command.addAll(quickest(executableJar.toAbsolutePath()));
        command.addAll(List.of(
                "--server.address=127.0.0.1",
                "--server.port=0",
                "--docksweep.port-file=" + portFile,
                "--docksweep.data-dir=" + folder.toAbsolutePath()));
        settings.forEach((name, value) -> command.add("--" + name + "=" + value));
        ProcessBuilder builder = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(log.toFile()));
        // Everybody on the machine can read a command line; the environment of a process only its owner.
        builder.environment().put("DOCKSWEEP_BOOTSTRAP_TOKEN", token);
        builder.environment().put("DOCKSWEEP_BOOTSTRAPTOKEN", token);
        Process process = builder.start();
        try {
            URI address = awaitReady(process, portFile, log);
            return new ChildService(process, address);
        } catch (IOException | RuntimeException e) {
            process.destroyForcibly();
            throw e;
        }
    }

    /**
     * The way to start it: from the folder where the build took the jar apart, with the archive of its classes, when
     * these are there and not older than the jar; else the jar as it is. An archive of another Java is left aside by
     * the virtual machine itself.
     */
    private static List<String> quickest(Path executableJar) throws IOException {
        String name = executableJar.getFileName().toString();
        Path folder = executableJar.resolveSibling(name.replaceFirst("\\.jar$", ""));
        Path thinJar = folder.resolve(name);
        Path archive = folder.resolve("classes.jsa");
        boolean upToDate = Files.isRegularFile(thinJar)
                && Files.isRegularFile(archive)
                && Files.getLastModifiedTime(archive).compareTo(Files.getLastModifiedTime(executableJar)) >= 0;
        return upToDate
                ? List.of("-XX:SharedArchiveFile=" + archive, "-Dspring.aot.enabled=true", "-jar", thinJar.toString())
                : List.of("-jar", executableJar.toString());
    }

    private static URI awaitReady(Process process, Path portFile, Path log) throws IOException {
        long deadline = System.nanoTime() + READY_WITHIN.toNanos();
        HttpClient http = HttpClient.newHttpClient();
        while (System.nanoTime() < deadline) {
            if (!process.isAlive()) {
                throw new IOException("the service ended with code " + process.exitValue()
                        + " before it was ready; read " + log.toAbsolutePath());
            }
            if (Files.exists(portFile)) {
                String port = Files.readString(portFile).strip();
                if (!port.isEmpty()) {
                    URI address = URI.create("http://127.0.0.1:" + port);
                    if (isHealthy(http, address)) {
                        return address;
                    }
                }
            }
            pollAgain(process);
        }
        throw new IOException(
                "the service was not ready within " + READY_WITHIN.toSeconds() + " s; read " + log.toAbsolutePath());
    }

    private static void pollAgain(Process process) throws IOException {
        try {
            process.waitFor(POLL_MS, TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("stopped while waiting for the service", e);
        }
    }

    private static boolean isHealthy(HttpClient http, URI address) throws IOException {
        try {
            HttpRequest request = HttpRequest.newBuilder(address.resolve(ApiPaths.HEALTH))
                    .timeout(Duration.ofSeconds(5))
                    .build();
            return http.send(request, HttpResponse.BodyHandlers.discarding()).statusCode() == 200;
        } catch (java.net.ConnectException | java.net.http.HttpTimeoutException e) {
            return false;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("stopped while waiting for the service", e);
        }
    }

    /**
     * Where it listens.
     *
     * @return address on the loopback interface
     */
    public URI address() {
        return address;
    }

    /**
     * Process id.
     *
     * @return the id
     */
    public long pid() {
        return process.pid();
    }

    /** Kills it at once (SIGKILL), without a chance to tidy up, and waits for its end. */
    public void kill() {
        process.destroyForcibly();
        awaitEnd();
        forget();
    }

    /** Asks it to stop, and kills it when it does not. */
    @Override
    public void close() {
        process.destroy();
        if (!awaitEnd()) {
            process.destroyForcibly();
            awaitEnd();
        }
        forget();
    }

    private boolean awaitEnd() {
        try {
            return process.waitFor(STOP_WITHIN.toSeconds(), TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    private void forget() {
        try {
            Runtime.getRuntime().removeShutdownHook(stopAtExit);
        } catch (IllegalStateException alreadyShuttingDown) {
            // The hook runs by itself then.
            return;
        }
    }
}
