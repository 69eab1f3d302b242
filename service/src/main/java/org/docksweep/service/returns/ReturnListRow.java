package org.docksweep.service.returns;

import jakarta.persistence.CollectionTable;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Embeddable;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.OrderColumn;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.docksweep.contract.ReturnList;
import org.docksweep.fleet.AssetTag;
import org.docksweep.service.store.Stored;

/** A return list as stored. Its lines never change; it is open until it is closed. */
@Entity
@Table(name = "return_list")
class ReturnListRow extends Stored<UUID> {
    @Id
    private UUID id;

    private String orderNumber;
    private String customer;
    private LocalDate dueOn;
    private Instant storedAt;
    private Instant closedAt;
    private String bodySha256;

    @ElementCollection
    @CollectionTable(name = "return_list_line", joinColumns = @JoinColumn(name = "return_list_id"))
    @OrderColumn(name = "line_number")
    private List<Line> lines = new ArrayList<>();

    @Version
    private int version;

    protected ReturnListRow() {}

    ReturnListRow(ReturnList list, String bodySha256, Instant storedAt) {
        this.id = list.id();
        this.orderNumber = list.orderNumber();
        this.customer = list.customer();
        this.dueOn = list.dueOn();
        this.storedAt = storedAt;
        this.bodySha256 = bodySha256;
        list.lines().forEach(l -> lines.add(new Line(l)));
    }

    /** Closes it; a closed list stays closed. */
    boolean close(Instant at) {
        if (closedAt != null) {
            return false;
        }
        closedAt = at;
        return true;
    }

    ReturnList list() {
        return new ReturnList(
                id,
                orderNumber,
                customer,
                dueOn,
                closedAt != null,
                lines.stream().map(Line::line).toList());
    }

    String bodySha256() {
        return bodySha256;
    }

    Instant storedAt() {
        return storedAt;
    }

    Instant closedAt() {
        return closedAt;
    }

    LocalDate dueOn() {
        return dueOn;
    }

    @Override
    public UUID getId() {
        return id;
    }

    /** One cabinet due back. */
    @Embeddable
    static class Line {
        private String tag;
        private String modelCode;

        protected Line() {}

        Line(ReturnList.Line line) {
            this.tag = line.tag().value();
            this.modelCode = line.modelCode();
        }

        ReturnList.Line line() {
            return new ReturnList.Line(new AssetTag(tag), modelCode);
        }
    }
}
