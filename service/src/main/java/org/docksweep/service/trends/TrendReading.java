package org.docksweep.service.trends;

import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.Instant;
import java.util.Objects;
import java.util.UUID;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.DriftRow;
import org.docksweep.contract.MeasurementBody;
import org.docksweep.gate.Reading;
import org.docksweep.gate.ReadingKind;
import org.docksweep.service.store.Stored;

/** A reading of an unspoiled measurement, never changed. */
@Entity
@Table(name = "trend_reading")
class TrendReading extends Stored<TrendReading.Key> {
    static final String INSERT = "insert into trend_reading (measurement_id, line_number, tag, model_code,"
            + " test_point_code, owner, kind, taken_at, reading_value) values (?, ?, ?, ?, ?, ?, ?, ?, ?)";

    /** A reading is known by its measurement and its place in it. */
    @Embeddable
    static class Key implements Serializable {
        private static final long serialVersionUID = 1L;

        private UUID measurementId;
        private int lineNumber;

        protected Key() {}

        @Override
        public boolean equals(Object other) {
            return other instanceof Key key && measurementId.equals(key.measurementId) && lineNumber == key.lineNumber;
        }

        @Override
        public int hashCode() {
            return Objects.hash(measurementId, lineNumber);
        }
    }

    @EmbeddedId
    private Key key;

    private String tag;
    private String modelCode;
    private String testPointCode;
    private String owner;

    @Enumerated(EnumType.STRING)
    private ReadingKind kind;

    private Instant takenAt;
    private double readingValue;

    protected TrendReading() {}

    /** In the order of {@link #INSERT}. */
    static Object[] values(CheckInBody checkIn, MeasurementBody measurement, int line, Reading reading) {
        return new Object[] {
            measurement.id(),
            line,
            checkIn.tag().value(),
            checkIn.modelCode(),
            measurement.judgement().testPointCode(),
            reading.positionCode() == null ? "" : reading.positionCode(),
            reading.kind(),
            measurement.takenAt(),
            reading.value()
        };
    }

    DriftRow.Point point() {
        return new DriftRow.Point(takenAt, readingValue);
    }

    String tag() {
        return tag;
    }

    @Override
    public Key getId() {
        return key;
    }
}
