package org.docksweep.service.site;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.boot.web.server.context.WebServerApplicationContext;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/** Tells whoever started this process the port it chose: in one step, so that nobody reads half a number. */
@Component
class PortFile {
    private final Site site;

    PortFile(Site site) {
        this.site = site;
    }

    @EventListener
    void ready(ApplicationReadyEvent event) {
        if (site.portFile().isBlank() || !(event.getApplicationContext() instanceof WebServerApplicationContext web)) {
            return;
        }
        Path file = Path.of(site.portFile()).toAbsolutePath();
        try {
            Files.createDirectories(file.getParent());
            Path draft = Files.createTempFile(file.getParent(), "port", ".tmp");
            Files.writeString(draft, Integer.toString(web.getWebServer().getPort()));
            Files.move(draft, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot write docksweep.port-file " + file, e);
        }
    }
}
