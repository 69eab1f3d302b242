package org.docksweep.service.retention;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import org.docksweep.contract.RetentionReport;

/**
 * Removes curves and recordings past their time. For ever stay: check-ins, headers of measurements with their verdicts,
 * readings that trends follow, histories, jobs and their proofs, baselines, references, the audit log.
 */
public final class Retention {
    private Retention() {}

    /**
     * Looks what is past its time, and removes it where asked to.
     *
     * @param connection connection of its own, to be closed afterwards
     * @param recordings folder of the recordings
     * @param settings how long what is kept
     * @param clock clock
     * @param by who asks, for the audit log; null only looks
     * @param requestId id of the request, or null without one
     * @return what was found
     * @throws SQLException if the database fails
     * @throws IOException if the folder cannot be read, or a file not be deleted
     */
    public static RetentionReport run(
            Connection connection,
            Path recordings,
            RetentionSettings settings,
            Clock clock,
            String by,
            String requestId)
            throws SQLException, IOException {
        LocalDate today = LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
        LocalDate curvesBefore = settings.curvesBefore(today);
        LocalDate recordingsBefore = settings.recordingsBefore(today);
        RetentionLog log = new RetentionLog(clock, by, requestId);
        connection.setAutoCommit(false);
        try {
            long curves = 0;
            long held = 0;
            if (curvesBefore != null) {
                held = PastCurves.count(connection, curvesBefore, true);
                curves = by == null
                        ? PastCurves.count(connection, curvesBefore, false)
                        : PastCurves.remove(connection, curvesBefore, log);
            }
            int files = 0;
            long bytes = 0;
            if (recordingsBefore != null) {
                PastRecordings.Found found = PastRecordings.find(connection, recordings, recordingsBefore);
                if (by != null) {
                    PastRecordings.remove(connection, found, recordingsBefore, log);
                }
                files = found.files().size();
                bytes = found.bytes();
                held += found.held();
            }
            connection.commit();
            return new RetentionReport(by != null, curvesBefore, recordingsBefore, curves, files, bytes, held);
        } catch (SQLException | IOException | RuntimeException e) {
            connection.rollback();
            throw e;
        }
    }
}
