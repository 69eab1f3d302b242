package org.docksweep.service.dispatches;

import jakarta.persistence.CollectionTable;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Embeddable;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.OrderColumn;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.docksweep.contract.Dispatch;
import org.docksweep.service.store.Stored;

/** A dispatch as stored; never changed. */
@Entity
@Table(name = "dispatch")
class DispatchRow extends Stored<UUID> {
    @Id
    private UUID id;

    private String orderNumber;
    private String customer;
    private LocalDate outOn;
    private LocalDate dueOn;
    private String bodySha256;

    @ElementCollection
    @CollectionTable(name = "dispatch_line", joinColumns = @JoinColumn(name = "dispatch_id"))
    @OrderColumn(name = "line_number")
    private List<Line> lines = new ArrayList<>();

    protected DispatchRow() {}

    DispatchRow(Dispatch dispatch, String bodySha256) {
        this.id = dispatch.id();
        this.orderNumber = dispatch.orderNumber();
        this.customer = dispatch.customer();
        this.outOn = dispatch.outOn();
        this.dueOn = dispatch.dueOn();
        this.bodySha256 = bodySha256;
        dispatch.lines().forEach(l -> lines.add(new Line(l)));
    }

    Dispatch dispatch() {
        return new Dispatch(
                id,
                orderNumber,
                customer,
                outOn,
                dueOn,
                lines.stream().map(Line::line).toList());
    }

    String bodySha256() {
        return bodySha256;
    }

    @Override
    public UUID getId() {
        return id;
    }

    /** Units of one model. */
    @Embeddable
    static class Line {
        private String modelCode;
        private int unitCount;

        protected Line() {}

        Line(Dispatch.Line line) {
            this.modelCode = line.modelCode();
            this.unitCount = line.count();
        }

        Dispatch.Line line() {
            return new Dispatch.Line(modelCode, unitCount);
        }
    }
}
