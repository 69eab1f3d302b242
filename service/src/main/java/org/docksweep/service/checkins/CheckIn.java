package org.docksweep.service.checkins;

import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Embeddable;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.OrderColumn;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.MeasurementBody;
import org.docksweep.contract.ReturnReport;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Route;
import org.docksweep.fleet.Verdict;
import org.docksweep.fleet.VisualItem;
import org.docksweep.gate.ReadingState;
import org.docksweep.judge.PositionState;
import org.docksweep.service.store.Stored;
import org.docksweep.service.store.StoredJson;
import org.docksweep.suspect.Suspect;
import tools.jackson.core.type.TypeReference;

/** A check-in as stored by {@link NewCheckIn}, never changed; how it was answered is in {@link CheckInBefore}. */
@Entity
@Table(name = "check_in")
class CheckIn extends Stored<UUID> {
    @Id
    private UUID id;

    private String tag;
    private String modelCode;
    private UUID returnListId;
    private String kioskId;
    private String operator;
    private Instant startedAt;
    private Instant finishedAt;
    private Instant receivedAt;

    @Column(length = 1_000)
    private String visualDamageJson;

    @Enumerated(EnumType.STRING)
    private Verdict verdict;

    @Enumerated(EnumType.STRING)
    private Route route;

    private boolean watch;

    @Column(length = 4_000)
    private String reasonJson;

    private String faultPositionCode;

    @Column(length = 1_000_000)
    private String suspectsJson;

    private String printedJobCode;
    private String judgeVersion;
    private int limitsVersion;
    private String benchJobCode;

    @ElementCollection
    @CollectionTable(name = "check_in_position", joinColumns = @JoinColumn(name = "check_in_id"))
    @OrderColumn(name = "line_number")
    private List<Position> positions = new ArrayList<>();

    protected CheckIn() {}

    private static JobCode jobCode(String code) {
        return code == null ? null : new JobCode(code);
    }

    ReturnReport.Row row() {
        return new ReturnReport.Row(
                new AssetTag(tag),
                modelCode,
                finishedAt,
                verdict,
                route,
                watch,
                StoredJson.read(reasonJson, Reason.class),
                jobCode(benchJobCode));
    }

    CheckInBody body(List<MeasurementBody> measurements) {
        Set<VisualItem> damage =
                new TreeSet<>(StoredJson.read(visualDamageJson, new TypeReference<List<VisualItem>>() {}));
        return new CheckInBody(
                id,
                new AssetTag(tag),
                modelCode,
                returnListId,
                kioskId,
                operator,
                startedAt,
                finishedAt,
                damage,
                verdict,
                route,
                watch,
                StoredJson.read(reasonJson, Reason.class),
                faultPositionCode,
                positions.stream().map(Position::state).toList(),
                StoredJson.read(suspectsJson, new TypeReference<List<Suspect>>() {}),
                jobCode(printedJobCode),
                judgeVersion,
                limitsVersion,
                measurements);
    }

    @Override
    public UUID getId() {
        return id;
    }

    /** How a position came out, with the driver model that sat there. */
    @Embeddable
    static class Position {
        private String positionCode;
        private String driverModelCode;

        @Enumerated(EnumType.STRING)
        private ReadingState state;

        @Column(length = 4_000)
        private String wordJson;

        private String headline;

        protected Position() {}

        PositionState state() {
            return new PositionState(positionCode, state, StoredJson.read(wordJson, Reason.class), headline);
        }
    }
}
