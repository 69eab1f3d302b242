package org.docksweep.service;

import org.docksweep.service.backup.OfflineCommand;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;
import org.springframework.boot.security.autoconfigure.UserDetailsServiceAutoConfiguration;

/** The service: holds the fleet and its driver histories. */
@SpringBootApplication(exclude = UserDetailsServiceAutoConfiguration.class)
public class DocksweepService {

    /**
     * Starts the service, or runs one of its offline commands.
     *
     * @param arguments Spring Boot arguments; before them, for a command, its name
     */
    public static void main(String[] arguments) {
        if (OfflineCommand.isAskedFor(arguments)) {
            System.exit(OfflineCommand.run(System.out, System.err, arguments));
        }
        SpringApplication.run(DocksweepService.class, arguments);
    }
}
