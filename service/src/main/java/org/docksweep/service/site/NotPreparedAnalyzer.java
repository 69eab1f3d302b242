package org.docksweep.service.site;

import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;

/** Says what to do instead of printing a stack trace. Named in META-INF/spring.factories. */
class NotPreparedAnalyzer extends AbstractFailureAnalyzer<PreparedStart.NotPrepared> {
    @Override
    protected FailureAnalysis analyze(Throwable rootFailure, PreparedStart.NotPrepared cause) {
        return new FailureAnalysis(
                cause.getMessage(),
                "Leave -Dspring.aot.enabled=true out of the command that starts the service; it then starts a few seconds"
                        + " slower, with every part.",
                cause);
    }
}
