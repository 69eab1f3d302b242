package org.docksweep.kiosk;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.classic.spi.ThrowableProxyUtil;
import ch.qos.logback.core.AppenderBase;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.slf4j.LoggerFactory;

/** Hears everything the kiosk's code logs, whatever the level, until it is closed. */
public final class LogEar extends AppenderBase<ILoggingEvent> implements AutoCloseable {
    private final ConcurrentLinkedQueue<String> lines = new ConcurrentLinkedQueue<>();
    private final Logger ours = (Logger) LoggerFactory.getLogger("org.docksweep");
    private final Level before = ours.getLevel();

    /** Begins to listen. */
    public LogEar() {
        setContext(ours.getLoggerContext());
        start();
        ours.setLevel(Level.TRACE);
        ours.addAppender(this);
    }

    @Override
    protected void append(ILoggingEvent event) {
        String trace = event.getThrowableProxy() == null ? "" : ThrowableProxyUtil.asString(event.getThrowableProxy());
        lines.add(event.getFormattedMessage() + " " + trace);
    }

    /**
     * Everything heard so far.
     *
     * @return messages with their stack traces
     */
    public String heard() {
        return String.join("\n", lines);
    }

    @Override
    public void close() {
        ours.detachAppender(this);
        ours.setLevel(before);
    }
}
