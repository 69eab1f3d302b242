package org.docksweep.service.audit;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.docksweep.contract.AuditEntry;

/** A line of the log. */
@Entity
@Table(name = "audit_entry")
class AuditRow {
    static final int LONGEST_NAME = 120;
    static final int LONGEST_TARGET = 300;

    static final String INSERT = "insert into audit_entry (at, done_by, kiosk, person_id, action, target, outcome,"
            + " request_id) values (?, ?, ?, ?, ?, ?, ?, ?)";

    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    private Long number;

    @Column(name = "at")
    private Instant at;

    private String doneBy;
    private String kiosk;
    private UUID personId;
    private String action;
    private String target;

    @Enumerated(EnumType.STRING)
    private AuditEntry.Outcome outcome;

    private String requestId;

    protected AuditRow() {}

    static String cut(String text, int most) {
        return text.length() <= most ? text : text.substring(0, most);
    }

    long number() {
        return number;
    }

    AuditEntry entry() {
        return new AuditEntry(number, at, doneBy, kiosk, personId, action, target, outcome, requestId);
    }
}
