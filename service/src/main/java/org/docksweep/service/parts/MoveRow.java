package org.docksweep.service.parts;

import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.docksweep.contract.StockMove;
import org.docksweep.fleet.JobCode;
import org.docksweep.service.store.Stored;

/** A stock move as booked, never changed. */
@Entity
@Table(name = "stock_move")
class MoveRow extends Stored<UUID> {
    @Id
    private UUID id;

    private String partNumber;
    private Instant happenedAt;
    private Instant storedAt;
    private String doneBy;

    @Enumerated(EnumType.STRING)
    private StockMove.Kind kind;

    private int changeCount;
    private int stockAfter;
    private String jobCode;
    private String bodySha256;

    protected MoveRow() {}

    MoveRow(StockMove move, Instant storedAt, String bodySha256) {
        this.id = move.id();
        this.partNumber = move.partNumber();
        this.happenedAt = move.at();
        this.storedAt = storedAt;
        this.doneBy = move.by();
        this.kind = move.kind();
        this.changeCount = move.change();
        this.stockAfter = move.stockAfter();
        this.jobCode = move.jobCode() == null ? null : move.jobCode().value();
        this.bodySha256 = bodySha256;
    }

    StockMove move() {
        return new StockMove(
                id,
                partNumber,
                happenedAt,
                doneBy,
                kind,
                changeCount,
                stockAfter,
                jobCode == null ? null : new JobCode(jobCode));
    }

    String bodySha256() {
        return bodySha256;
    }

    String partNumber() {
        return partNumber;
    }

    /** Key to go on reading after this move. */
    String key() {
        return storedAt + "~" + id;
    }

    @Override
    public UUID getId() {
        return id;
    }
}
