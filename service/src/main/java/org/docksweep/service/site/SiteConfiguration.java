package org.docksweep.service.site;

import java.time.Clock;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

@Configuration(proxyBeanMethods = false)
@EnableConfigurationProperties(Site.class)
class SiteConfiguration {
    @Bean
    Clock clock() {
        return Clock.systemUTC();
    }
}
