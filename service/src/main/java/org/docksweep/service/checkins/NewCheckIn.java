package org.docksweep.service.checkins;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.CheckInReceipt;
import org.docksweep.fleet.JobCode;
import org.docksweep.judge.PositionState;
import org.docksweep.service.store.AddedRows;
import org.docksweep.service.store.StoredJson;
import org.springframework.stereotype.Component;

/** Adds the rows of a check-in that {@link CheckIn} reads, right before the commit. */
@Component
class NewCheckIn {
    private static final String HEAD =
            "insert into check_in (id, tag, model_code, return_list_id, kiosk_id, operator, started_at, finished_at,"
                    + " received_at, visual_damage_json, verdict, route, watch, reason_json, fault_position_code,"
                    + " suspects_json, printed_job_code, judge_version, limits_version, body_sha256, status_after,"
                    + " bench_job_code, joined_open_job)"
                    + " values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)";
    private static final String POSITION =
            "insert into check_in_position (check_in_id, line_number, position_code, driver_model_code, state, word_json,"
                    + " headline) values (?, ?, ?, ?, ?, ?, ?)";

    private final AddedRows rows;

    NewCheckIn(AddedRows rows) {
        this.rows = rows;
    }

    void add(
            CheckInBody body,
            String bodySha256,
            Instant receivedAt,
            CheckInReceipt receipt,
            Map<String, String> driverModels) {
        Object[] head = {
            body.id(),
            body.tag().value(),
            body.modelCode(),
            body.returnListId(),
            body.kioskId(),
            body.operator(),
            body.startedAt(),
            body.finishedAt(),
            receivedAt,
            StoredJson.write(body.visualDamage()),
            body.verdict(),
            body.route(),
            body.watch(),
            StoredJson.write(body.reason()),
            body.faultPositionCode(),
            StoredJson.write(body.suspects()),
            text(body.jobCode()),
            body.judgeVersion(),
            body.limitsVersion(),
            bodySha256,
            receipt.status(),
            text(receipt.jobCode()),
            receipt.joinedOpenJob()
        };
        rows.later(HEAD, List.<Object[]>of(head));
        List<Object[]> positions = new ArrayList<>();
        for (PositionState position : body.positions()) {
            positions.add(new Object[] {
                body.id(),
                positions.size(),
                position.positionCode(),
                driverModels.get(position.positionCode()),
                position.state(),
                position.word() == null ? null : StoredJson.write(position.word()),
                position.headline()
            });
        }
        rows.later(POSITION, positions);
    }

    private static String text(JobCode code) {
        return code == null ? null : code.value();
    }
}
