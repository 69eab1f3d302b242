package org.docksweep.service.web;

import org.springframework.boot.tomcat.servlet.TomcatServletWebServerFactory;
import org.springframework.boot.web.server.WebServerFactoryCustomizer;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

@Configuration(proxyBeanMethods = false)
class TomcatConfiguration {
    @Bean
    WebServerFactoryCustomizer<TomcatServletWebServerFactory> problemsInsteadOfPages() {
        return factory -> factory.addContextCustomizers(
                context -> context.getParent().getPipeline().addValve(new ProblemReportValve()));
    }
}
