package org.docksweep.service.site;

import org.springframework.boot.tomcat.servlet.TomcatServletWebServerFactory;
import org.springframework.boot.web.server.Ssl;
import org.springframework.boot.web.server.WebServerFactoryCustomizer;
import org.springframework.core.Ordered;
import org.springframework.stereotype.Component;

/** Lets the service listen beyond the loopback interface only behind TLS. */
@Component
class ClosedByDefault implements WebServerFactoryCustomizer<TomcatServletWebServerFactory>, Ordered {
    private final Site site;

    ClosedByDefault(Site site) {
        this.site = site;
    }

    @Override
    public void customize(TomcatServletWebServerFactory factory) {
        boolean loopback = factory.getAddress() != null && factory.getAddress().isLoopbackAddress();
        boolean tls = Ssl.isEnabled(factory.getSsl());
        if (!loopback && !tls && !site.tlsEndsAtProxy()) {
            throw new OpenBeyondLoopback(
                    factory.getAddress() == null
                            ? "every address"
                            : factory.getAddress().getHostAddress());
        }
    }

    /** After the properties were applied. */
    @Override
    public int getOrder() {
        return Ordered.LOWEST_PRECEDENCE;
    }
}
