package org.docksweep.service.checkins;

import java.util.UUID;
import org.docksweep.contract.CheckInReceipt;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.JobCode;
import org.docksweep.service.store.Question;

/**
 * What tells whether a check-in was stored before, and how it was answered.
 *
 * @param tag cabinet
 * @param bodySha256 SHA-256 of its body
 * @param receipt the answer
 */
record CheckInBefore(String tag, String bodySha256, CheckInReceipt receipt) {
    static Question<CheckInBefore> of(UUID id) {
        return new Question<>(
                "select tag, body_sha256, status_after, bench_job_code, joined_open_job from check_in where id = ?",
                (row, number) -> new CheckInBefore(
                        row.getString(1),
                        row.getString(2),
                        new CheckInReceipt(
                                id,
                                CabinetStatus.valueOf(row.getString(3)),
                                row.getString(4) == null ? null : new JobCode(row.getString(4)),
                                row.getBoolean(5))),
                id);
    }
}
