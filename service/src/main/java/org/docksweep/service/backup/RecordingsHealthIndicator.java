package org.docksweep.service.backup;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.docksweep.service.site.Site;
import org.springframework.boot.health.contributor.AbstractHealthIndicator;
import org.springframework.boot.health.contributor.Health;
import org.springframework.stereotype.Component;

/** Down when no recording could be kept: the folder cannot be made or written to. */
@Component
class RecordingsHealthIndicator extends AbstractHealthIndicator {
    private final Path folder;

    RecordingsHealthIndicator(Site site) {
        super("the folder of the recordings cannot be written to");
        this.folder = site.dataDir().toAbsolutePath().resolve("recordings");
    }

    @Override
    protected void doHealthCheck(Health.Builder builder) throws IOException {
        Files.createDirectories(folder);
        Path probe = Files.createTempFile(folder, "health", ".tmp");
        Files.delete(probe);
        builder.up();
    }
}
