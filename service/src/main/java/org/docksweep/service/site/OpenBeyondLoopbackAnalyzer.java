package org.docksweep.service.site;

import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;

/** Says what to do instead of printing a stack trace. Named in META-INF/spring.factories. */
class OpenBeyondLoopbackAnalyzer extends AbstractFailureAnalyzer<OpenBeyondLoopback> {
    @Override
    protected FailureAnalysis analyze(Throwable rootFailure, OpenBeyondLoopback cause) {
        return new FailureAnalysis(
                cause.getMessage(),
                "Leave server.address at 127.0.0.1, or configure TLS (server.ssl.bundle), or, when TLS ends at a proxy"
                        + " in front of this service, set docksweep.tls-ends-at-proxy=true.",
                cause);
    }
}
