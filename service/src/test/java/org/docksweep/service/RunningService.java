package org.docksweep.service;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.ParameterContext;
import org.junit.jupiter.api.extension.ParameterResolver;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.web.server.context.WebServerApplicationContext;
import org.springframework.context.ConfigurableApplicationContext;

/**
 * Starts the real application once for all tests of a virtual machine, on a port the system chooses, over a real database
 * file in a folder of its own, and hands a client to every test that asks for an {@link Api}. Where classes are dealt to
 * several virtual machines each class is a run of its own there, so that it is not kept in a store of a run.
 */
final class RunningService implements ParameterResolver {
    static final String MANAGER_TOKEN = "manager-of-the-tests-0123456789-abcdefgh";
    private static Instance shared;

    @Override
    public boolean supportsParameter(ParameterContext parameter, ExtensionContext context) {
        return List.of(Api.class, DataSource.class)
                .contains(parameter.getParameter().getType());
    }

    @Override
    public Object resolveParameter(ParameterContext parameter, ExtensionContext context) {
        return parameter.getParameter().getType() == Api.class ? shared().api() : shared().database();
    }

    private static synchronized Instance shared() {
        if (shared == null) {
            shared = Instance.inNewFolder();
            AtTheEnd.stop(shared::close);
        }
        return shared;
    }

    /** One running service. */
    static final class Instance implements AutoCloseable {
        final Path folder;
        private final boolean ownsFolder;
        private final ConfigurableApplicationContext context;

        private Instance(Engine engine, Path folder, boolean ownsFolder, String... more) {
            this.folder = folder;
            this.ownsFolder = ownsFolder;
            Map<String, String> settings = new LinkedHashMap<>(Map.of(
                    "--server.port", "0",
                    "--docksweep.data-dir", folder.toString(),
                    "--docksweep.site-name", "Marram Coast Hire",
                    "--docksweep.bootstrap-token", MANAGER_TOKEN,
                    "--springdoc.api-docs.enabled", "true",
                    // Needs to know how the database writes names; KilledServiceIT and PreparedStartIT start as a house
                    // does.
                    "--spring.jpa.properties.hibernate.boot.allow_jdbc_metadata_access", "true",
                    "--spring.jpa.hibernate.ddl-auto", "validate",
                    "--logging.level.root", "WARN"));
            List<String> all = new ArrayList<>(engine.settings(folder));
            all.addAll(List.of(more));
            for (String setting : all) {
                settings.put(setting.substring(0, setting.indexOf('=')), setting.substring(setting.indexOf('=') + 1));
            }
            this.context = SpringApplication.run(
                    DocksweepService.class,
                    settings.entrySet().stream()
                            .map(e -> e.getKey() + "=" + e.getValue())
                            .toArray(String[]::new));
        }

        static Instance inNewFolder() {
            try {
                return new Instance(Engine.ofThisRun(), Files.createTempDirectory("docksweep-service-test"), true);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }

        static Instance in(Path folder, String... more) {
            return on(Engine.ofThisRun(), folder, more);
        }

        static Instance on(Engine engine, Path folder, String... more) {
            return new Instance(engine, folder, false, more);
        }

        Api api() {
            int port = ((WebServerApplicationContext) context).getWebServer().getPort();
            return new Api(URI.create("http://127.0.0.1:" + port), MANAGER_TOKEN);
        }

        /** For what is counted or put there by plain SQL beside the API. */
        DataSource database() {
            return context.getBean(DataSource.class);
        }

        @Override
        public void close() {
            context.close();
            if (!ownsFolder) {
                return;
            }
            try (Stream<Path> files = Files.walk(folder)) {
                for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(file);
                }
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }
}
