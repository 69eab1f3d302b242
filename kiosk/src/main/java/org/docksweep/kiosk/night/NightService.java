package org.docksweep.kiosk.night;

import java.io.IOException;
import java.net.URI;
import java.util.Map;
import org.docksweep.contract.DemoHouse;
import org.docksweep.kiosk.service.ChildService;
import org.docksweep.kiosk.service.ServiceClient;

/** The service of a night, in a process of its own. */
final class NightService implements AutoCloseable {
    private final NightOptions options;
    private final DemoHouse house;
    private final String token = NightKiosk.newToken();
    private volatile ChildService running;

    /**
     * Prepares it.
     *
     * @param options jar and folder
     * @param house name and time zone of the site
     */
    NightService(NightOptions options, DemoHouse house) {
        this.options = options;
        this.house = house;
    }

    /**
     * Starts it.
     *
     * @return client with the token of a manager
     * @throws IOException if it does not start
     */
    ServiceClient start() throws IOException {
        running = ChildService.start(
                options.serviceJar(),
                options.folder().resolve("service"),
                token,
                Map.of("docksweep.site-name", house.siteName(), "docksweep.time-zone", house.timeZone()));
        return new ServiceClient(running.address(), token);
    }

    /** Ends it at once (SIGKILL). */
    void kill() {
        running.kill();
    }

    URI address() {
        return running.address();
    }

    /** The manager token of this night. */
    String token() {
        return token;
    }

    @Override
    public void close() {
        if (running != null) {
            running.close();
        }
    }
}
