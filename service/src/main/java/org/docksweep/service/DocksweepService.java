package org.docksweep.service;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;
import org.springframework.boot.security.autoconfigure.UserDetailsServiceAutoConfiguration;

/** The service: holds the fleet and its driver histories. */
@SpringBootApplication(exclude = UserDetailsServiceAutoConfiguration.class)
public class DocksweepService {

    /**
     * Starts the service.
     *
     * @param arguments Spring Boot arguments
     */
    public static void main(String[] arguments) {
        SpringApplication.run(DocksweepService.class, arguments);
    }
}
