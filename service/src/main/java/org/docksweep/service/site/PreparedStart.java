package org.docksweep.service.site;

import org.springframework.aot.AotDetector;
import org.springframework.boot.context.event.ApplicationEnvironmentPreparedEvent;
import org.springframework.context.ApplicationListener;
import org.springframework.core.Ordered;
import org.springframework.core.env.Environment;
import org.springframework.core.env.Profiles;

/**
 * With {@code -Dspring.aot.enabled=true} the service starts with the parts that the build chose, for the usual settings.
 * Settings that need other parts are refused instead of being left without effect, as soon as all settings are read. Named
 * in META-INF/spring.factories.
 */
class PreparedStart implements ApplicationListener<ApplicationEnvironmentPreparedEvent>, Ordered {
    private static final String REPLICA = "docksweep.database.replica-url";
    private static final String DESCRIPTION = "springdoc.api-docs.enabled";

    /** A setting that a prepared start cannot follow. */
    static final class NotPrepared extends RuntimeException {
        private static final long serialVersionUID = 1L;

        NotPrepared(String setting) {
            super(setting + " needs parts that the prepared start (spring.aot.enabled=true) does not have");
        }
    }

    /** After those that read the settings and start the log. */
    @Override
    public int getOrder() {
        return Ordered.LOWEST_PRECEDENCE;
    }

    @Override
    public void onApplicationEvent(ApplicationEnvironmentPreparedEvent event) {
        Environment environment = event.getEnvironment();
        if (!AotDetector.useGeneratedArtifacts()) {
            return;
        }
        if (environment.containsProperty(REPLICA)) {
            throw new NotPrepared(REPLICA);
        }
        if (environment.getProperty(DESCRIPTION, Boolean.class, false)) {
            throw new NotPrepared(DESCRIPTION);
        }
        if (environment.acceptsProfiles(Profiles.of("metrics"))) {
            throw new NotPrepared("spring.profiles.active=metrics");
        }
    }
}
