package org.docksweep.service.parts;

import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.io.Serializable;
import java.time.Instant;
import java.time.LocalDate;
import org.docksweep.contract.PartUnit;
import org.docksweep.fleet.PartSource;
import org.docksweep.service.store.Stored;

/** A piece known by its serial. Of a whole driver it also knows the moving part in it, while it is a spare. */
@Entity
@Table(name = "part_unit")
class UnitRow extends Stored<UnitRow.Key> {
    @EmbeddedId
    private Key key;

    @Enumerated(EnumType.STRING)
    private PartUnit.State state;

    private boolean repaired;
    private Instant since;
    private String diaphragmPartNumber;
    private String diaphragmSerial;

    @Enumerated(EnumType.STRING)
    private PartSource diaphragmSource;

    private LocalDate diaphragmFittedOn;

    @Version
    private int version;

    protected UnitRow() {}

    UnitRow(String partNumber, String serial, PartUnit.State state, Instant since) {
        this.key = new Key(partNumber, serial);
        move(state, since);
    }

    void move(PartUnit.State to, Instant at) {
        this.state = to;
        this.since = at;
    }

    /** Keeps what moves in a driver that was taken out. */
    void holds(MovingPart part) {
        this.diaphragmPartNumber = part.partNumber();
        this.diaphragmSerial = part.serial();
        this.diaphragmSource = part.source();
        this.diaphragmFittedOn = part.fittedOn();
    }

    void repair(Instant at) {
        move(PartUnit.State.IN_STOCK, at);
        this.repaired = true;
    }

    MovingPart movingPart() {
        return new MovingPart(diaphragmPartNumber, diaphragmSerial, diaphragmSource, diaphragmFittedOn);
    }

    PartUnit unit() {
        return new PartUnit(key.partNumber(), key.serial(), state, repaired, since);
    }

    PartUnit.State state() {
        return state;
    }

    @Override
    public Key getId() {
        return key;
    }

    /** Part and serial. */
    @Embeddable
    record Key(String partNumber, String serial) implements Serializable {}
}
