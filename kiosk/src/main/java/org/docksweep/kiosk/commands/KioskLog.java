package org.docksweep.kiosk.commands;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.encoder.PatternLayoutEncoder;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.rolling.FixedWindowRollingPolicy;
import ch.qos.logback.core.rolling.RollingFileAppender;
import ch.qos.logback.core.rolling.SizeBasedTriggeringPolicy;
import ch.qos.logback.core.util.FileSize;
import java.nio.file.Path;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The log of a kiosk as files in its folder, since nobody sees standard error behind a full screen: what happened, without tokens and
 * PINs. Four files of 1 MB at most.
 */
final class KioskLog {
    private static final int FILES = 3;
    private static final long FILE_BYTES = 1_000_000;

    private KioskLog() {}

    /** Begins to log into a data folder, beside what goes to standard error. */
    static void into(Path folder) {
        LoggerContext context = (LoggerContext) LoggerFactory.getILoggerFactory();
        String file = folder.resolve("logs").resolve("kiosk.log").toString();
        RollingFileAppender<ILoggingEvent> appender = new RollingFileAppender<>();
        appender.setContext(context);
        appender.setFile(file);
        PatternLayoutEncoder encoder = new PatternLayoutEncoder();
        encoder.setContext(context);
        encoder.setPattern("%d{yyyy-MM-dd'T'HH:mm:ss.SSSXXX,UTC} %-5level [%thread] %logger{0}: %msg%n");
        encoder.start();
        appender.setEncoder(encoder);
        FixedWindowRollingPolicy rolling = new FixedWindowRollingPolicy();
        rolling.setContext(context);
        rolling.setParent(appender);
        rolling.setFileNamePattern(file + ".%i");
        rolling.setMinIndex(1);
        rolling.setMaxIndex(FILES);
        rolling.start();
        SizeBasedTriggeringPolicy<ILoggingEvent> full = new SizeBasedTriggeringPolicy<>();
        full.setContext(context);
        full.setMaxFileSize(new FileSize(FILE_BYTES));
        full.start();
        appender.setRollingPolicy(rolling);
        appender.setTriggeringPolicy(full);
        appender.start();
        context.getLogger("org.docksweep").setLevel(Level.INFO);
        context.getLogger(Logger.ROOT_LOGGER_NAME).addAppender(appender);
    }
}
