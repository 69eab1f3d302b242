package org.docksweep.service.backup;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.util.Arrays;
import java.util.Set;
import javax.sql.DataSource;
import org.docksweep.contract.RetentionReport;
import org.docksweep.service.retention.Retention;
import org.docksweep.service.retention.RetentionSettings;
import org.springframework.boot.WebApplicationType;
import org.springframework.boot.autoconfigure.ImportAutoConfiguration;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.boot.flyway.autoconfigure.FlywayAutoConfiguration;
import org.springframework.boot.jdbc.autoconfigure.DataSourceAutoConfiguration;
import org.springframework.context.ConfigurableApplicationContext;

/**
 * Commands for a service that does not run: {@code backup --to=FILE}, {@code restore --from=FILE}, {@code scrub},
 * {@code retention [--remove]}. They
 * take the service's own settings and need nothing of it but the database and the folder.
 */
public final class OfflineCommand {
    private static final Set<String> NAMES = Set.of("backup", "restore", "scrub", "retention");

    private static final String REMOVE = "--remove";

    private OfflineCommand() {}

    /** Database and migrations, nothing else. Not found by the service's own scan. */
    @ImportAutoConfiguration({DataSourceAutoConfiguration.class, FlywayAutoConfiguration.class})
    @EnableConfigurationProperties(RetentionSettings.class)
    static class Configuration {}

    /**
     * Whether these arguments ask for a command instead of the service.
     *
     * @param arguments arguments of the program
     * @return whether the first one is the name of a command
     */
    public static boolean isAskedFor(String... arguments) {
        return arguments.length > 0 && NAMES.contains(arguments[0]);
    }

    /**
     * Runs a command.
     *
     * @param out takes what was done
     * @param err takes what went wrong
     * @param arguments name of the command and its options
     * @return exit code: 0 done, 1 failed or something is damaged, 2 wrong use
     */
    public static int run(PrintStream out, PrintStream err, String... arguments) {
        String command = arguments[0];
        String option = command.equals("backup") ? "--to=" : command.equals("restore") ? "--from=" : null;
        Path file = option == null
                ? null
                : Arrays.stream(arguments)
                        .filter(a -> a.startsWith(option))
                        .map(a -> Path.of(a.substring(option.length())).toAbsolutePath())
                        .findFirst()
                        .orElse(null);
        if (option != null && file == null) {
            err.println(command + " needs " + option + "FILE");
            return 2;
        }
        if (command.equals("restore") && !Files.isRegularFile(file)) {
            err.println("there is no file " + file);
            return 2;
        }
        String[] settings = Arrays.stream(arguments)
                .skip(1)
                .filter(a -> option == null || !a.startsWith(option))
                .filter(a -> !a.equals(REMOVE))
                .toArray(String[]::new);
        try (ConfigurableApplicationContext context = new SpringApplicationBuilder(Configuration.class)
                        .web(WebApplicationType.NONE)
                        .logStartupInfo(false)
                        .registerShutdownHook(false)
                        .run(settings);
                Connection connection = context.getBean(DataSource.class).getConnection()) {
            Path recordings = Path.of(context.getEnvironment().getRequiredProperty("docksweep.data-dir"))
                    .toAbsolutePath()
                    .resolve("recordings");
            return switch (command) {
                case "backup" -> backup(connection, recordings, file, out);
                case "restore" -> restore(connection, recordings, file, out);
                case "retention" ->
                    retention(
                            connection,
                            recordings,
                            context.getBean(RetentionSettings.class),
                            Arrays.asList(arguments).contains(REMOVE),
                            out);
                default -> scrub(connection, recordings, out);
            };
        } catch (IOException | SQLException e) {
            err.println(command + " failed, nothing was changed: " + e.getMessage());
            return 1;
        } catch (RuntimeException e) {
            Throwable cause = e;
            while (cause.getCause() != null) {
                cause = cause.getCause();
            }
            err.println(command + " failed: " + cause.getMessage());
            err.println("A running service holds an H2 database for itself: stop it, or ask it for GET /api/export.");
            return 1;
        }
    }

    private static int backup(Connection connection, Path recordings, Path file, PrintStream out)
            throws IOException, SQLException {
        Files.createDirectories(file.getParent());
        Path draft = Files.createTempFile(file.getParent(), "backup", ".tmp");
        Manifest manifest;
        try {
            try (OutputStream stream = new BufferedOutputStream(Files.newOutputStream(draft))) {
                manifest = Exporter.write(connection, recordings, Clock.systemUTC(), stream);
            }
            Files.move(draft, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(draft);
        }
        out.println("backed up " + said(manifest) + " to " + file);
        return 0;
    }

    private static int restore(Connection connection, Path recordings, Path file, PrintStream out)
            throws IOException, SQLException {
        out.println("restored " + said(Importer.read(file, connection, recordings)) + " from " + file);
        return 0;
    }

    private static String said(Manifest manifest) {
        long rows = manifest.tables().stream().mapToLong(Manifest.Table::rows).sum();
        return rows + " rows of " + manifest.tables().size() + " tables"
                + (manifest.recordings() == null ? "" : " and " + manifest.recordings() + " recordings");
    }

    private static int retention(
            Connection connection, Path recordings, RetentionSettings settings, boolean remove, PrintStream out)
            throws IOException, SQLException {
        RetentionReport report = Retention.run(
                connection, recordings, settings, Clock.systemUTC(), remove ? "retention command" : null, null);
        out.println((remove ? "removed " : "would remove ") + report.curves() + " curves"
                + (report.curvesBefore() == null ? " (kept for ever)" : " received before " + report.curvesBefore())
                + ", " + report.recordings() + " recordings"
                + (report.recordingsBefore() == null
                        ? " (kept for ever)"
                        : " received before " + report.recordingsBefore())
                + " of " + report.recordingBytes() + " bytes; " + report.heldByOpenJobs()
                + " as old stay, since a bench job is open");
        return 0;
    }

    private static int scrub(Connection connection, Path recordings, PrintStream out) throws IOException, SQLException {
        RecordingScrub.Report report = RecordingScrub.run(recordings, connection);
        report.damaged().forEach(file -> out.println("damaged: " + file));
        report.strangers().forEach(file -> out.println("no recording: " + file));
        out.println(report.intact() + " intact, " + report.damaged().size() + " damaged, "
                + report.missing().size() + " named by measurements but not here, "
                + report.strangers().size() + " other files");
        return report.damaged().isEmpty() ? 0 : 1;
    }
}
