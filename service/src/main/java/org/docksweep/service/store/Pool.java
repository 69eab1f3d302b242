package org.docksweep.service.store;

import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.jdbc.autoconfigure.DataSourceProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** The pool as Spring Boot makes it, but one that waits for the migration. */
@Configuration(proxyBeanMethods = false)
class Pool {
    @Bean
    @ConfigurationProperties("spring.datasource.hikari")
    static MigratedPool dataSource(DataSourceProperties properties, Migration migration) {
        MigratedPool pool = properties
                .initializeDataSourceBuilder()
                .type(MigratedPool.class)
                .build();
        pool.after(migration);
        return pool;
    }
}
