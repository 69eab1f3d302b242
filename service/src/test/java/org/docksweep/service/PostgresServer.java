package org.docksweep.service;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;

/**
 * A PostgreSQL of the machine's own binaries, started once per run in a folder of its own on a free loopback port, and
 * stopped at its end. Without binaries tests skip and say so, or fail where that is demanded. As root it runs as the
 * user postgres, since the server refuses to run as root.
 */
final class PostgresServer {
    /** Set by the full run: a skipped capability is a failure there. */
    private static final String DEMAND = "docksweep.require.postgresql";

    /** Set by what measures: every commit is forced to the disk, as in a house. */
    static final String DURABLE = "docksweep.postgresql.durable";

    /** Set by what measures twice: the folder of the data, kept for the next run. */
    static final String FOLDER = "docksweep.postgresql.folder";

    static final String USER = "postgres";
    private static final String PASSWORD = "postgres-of-the-tests";
    private static final long PATIENCE_S = 120;
    private static PostgresServer running;

    private final Path folder;
    private final Path binaries;
    private final int port;
    private final boolean kept;
    private final Set<String> databases = new HashSet<>();

    private PostgresServer(Path binaries) throws IOException {
        this.binaries = binaries;
        this.kept = System.getProperty(FOLDER) != null;
        this.folder = kept
                ? Files.createDirectories(Path.of(System.getProperty(FOLDER)).toAbsolutePath())
                : Files.createTempDirectory("docksweep-postgresql");
        this.port = freePort();
    }

    /** The server; every test that calls this needs PostgreSQL. */
    static synchronized PostgresServer required() {
        if (running == null) {
            Path binaries = binaries();
            if (binaries == null) {
                String words = "no PostgreSQL found under /usr/lib/postgresql or on the path; install the package"
                        + " postgresql";
                if (Boolean.getBoolean(DEMAND)) {
                    throw new AssertionError(words);
                }
                System.out.println("SKIPPED: " + words);
                Assumptions.abort(words);
            }
            try {
                running = new PostgresServer(binaries);
                running.start();
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return running;
    }

    private static Path binaries() {
        List<Path> found = new ArrayList<>();
        Path packaged = Path.of("/usr/lib/postgresql");
        if (Files.isDirectory(packaged)) {
            try (Stream<Path> versions = Files.list(packaged)) {
                versions.map(v -> v.resolve("bin")).forEach(found::add);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        found.sort(Comparator.reverseOrder());
        Arrays.stream(System.getenv("PATH").split(java.io.File.pathSeparator))
                .map(Path::of)
                .forEach(found::add);
        return found.stream()
                .filter(p -> Files.isExecutable(p.resolve("initdb")))
                .findFirst()
                .orElse(null);
    }

    private static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        }
    }

    private void start() throws IOException {
        Path password = Files.writeString(folder.resolve("password"), PASSWORD);
        if (isRoot()) {
            Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwx------"));
            run(List.of("chown", "-R", USER + ":", folder.toString()));
        }
        if (!Files.isDirectory(Path.of(data()))) {
            run(asPostgres(
                    "initdb",
                    "-D",
                    data(),
                    "-U",
                    USER,
                    "-A",
                    "scram-sha-256",
                    "--pwfile=" + password,
                    "--no-sync",
                    "-E",
                    "UTF8",
                    "--locale=C.UTF-8"));
        }
        String options = "-p " + port + " -c listen_addresses=127.0.0.1 -c unix_socket_directories=" + folder
                + " -c max_connections=200"
                // Tests stop whole; what a power cut would take is not their matter.
                + (Boolean.getBoolean(DURABLE)
                        ? ""
                        : " -c fsync=off -c synchronous_commit=off -c full_page_writes=off");
        run(asPostgres(
                "pg_ctl",
                "-D",
                data(),
                "-w",
                "-t",
                "60",
                "-l",
                folder.resolve("log").toString(),
                "-o",
                options,
                "start"));
        AtTheEnd.stop(this::stop);
    }

    private void stop() {
        try {
            run(asPostgres("pg_ctl", "-D", data(), "-m", kept ? "fast" : "immediate", "-w", "stop"));
            if (kept) {
                return;
            }
            try (Stream<Path> files = Files.walk(folder)) {
                for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(file);
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Processor time its processes have used, those that ended left out. */
    double processorMs() {
        try {
            long first = Long.parseLong(
                    Files.readAllLines(folder.resolve("data/postmaster.pid")).get(0));
            return ProcessHandle.of(first)
                    .map(server -> Stream.concat(Stream.of(server), server.descendants())
                            .flatMap(process -> process.info().totalCpuDuration().stream())
                            .mapToDouble(time -> time.toNanos() / 1e6)
                            .sum())
                    .orElse(0.0);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private String data() {
        return folder.resolve("data").toString();
    }

    private static boolean isRoot() {
        return "root".equals(System.getProperty("user.name"));
    }

    private List<String> asPostgres(String program, String... arguments) {
        List<String> command = new ArrayList<>();
        if (isRoot()) {
            command.addAll(List.of("runuser", "-u", USER, "--"));
        }
        command.add(binaries.resolve(program).toString());
        command.addAll(List.of(arguments));
        return command;
    }

    private void run(List<String> command) throws IOException {
        Path output = Files.createTempFile("docksweep-postgresql", ".log");
        try {
            Process process = new ProcessBuilder(command)
                    .directory(folder.toFile())
                    .redirectErrorStream(true)
                    .redirectOutput(output.toFile())
                    .start();
            if (!process.waitFor(PATIENCE_S, TimeUnit.SECONDS) || process.exitValue() != 0) {
                process.destroyForcibly();
                throw new IOException(command + " failed: " + Files.readString(output));
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException(e);
        } finally {
            Files.deleteIfExists(output);
        }
    }

    private String url(String database) {
        return "jdbc:postgresql://127.0.0.1:" + port + "/" + database;
    }

    /** Settings of a service on a database of that name; an empty one is made the first time. */
    synchronized List<String> settings(String database) {
        if (databases.add(database)) {
            try (Connection connection = DriverManager.getConnection(url("postgres"), USER, PASSWORD)) {
                if (!exists(connection, database)) {
                    connection.createStatement().execute("create database " + database);
                }
            } catch (SQLException e) {
                throw new IllegalStateException(e);
            }
        }
        return List.of(
                "--spring.profiles.active=postgresql",
                "--docksweep.database.url=" + url(database),
                "--docksweep.database.user=" + USER,
                "--docksweep.database.password=" + PASSWORD);
    }

    private static boolean exists(Connection connection, String database) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement("select 1 from pg_database where datname = ?")) {
            statement.setString(1, database);
            try (ResultSet found = statement.executeQuery()) {
                return found.next();
            }
        }
    }

    Connection connect(String database) throws SQLException {
        return DriverManager.getConnection(url(database), USER, PASSWORD);
    }
}
