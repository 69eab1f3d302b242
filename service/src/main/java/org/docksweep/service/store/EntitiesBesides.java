package org.docksweep.service.store;

import jakarta.persistence.EntityManagerFactory;
import org.springframework.boot.context.event.ApplicationStartedEvent;
import org.springframework.boot.jpa.autoconfigure.EntityManagerFactoryBuilderCustomizer;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.event.EventListener;
import org.springframework.core.task.SimpleAsyncTaskExecutor;

/**
 * What Hibernate makes of the entities at every start, about a fifth of it, is made beside everything else. The start waits
 * for it before anybody is told that the service is ready, and fails when it failed.
 */
@Configuration(proxyBeanMethods = false)
class EntitiesBesides {
    @Bean
    static EntityManagerFactoryBuilderCustomizer besides() {
        return builder -> {
            SimpleAsyncTaskExecutor executor = new SimpleAsyncTaskExecutor("entities-");
            executor.setDaemon(true);
            builder.setBootstrapExecutor(executor);
        };
    }

    /** Asking for the metamodel waits for it, or throws what made it fail. */
    @Bean
    static Awaited awaited(EntityManagerFactory entities) {
        return new Awaited(entities);
    }

    static final class Awaited {
        private final EntityManagerFactory entities;

        Awaited(EntityManagerFactory entities) {
            this.entities = entities;
        }

        @EventListener(ApplicationStartedEvent.class)
        void started() {
            entities.getMetamodel();
        }
    }
}
