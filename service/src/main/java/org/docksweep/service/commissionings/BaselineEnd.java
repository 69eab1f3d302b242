package org.docksweep.service.commissionings;

import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.Instant;
import java.util.Objects;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.JobCode;
import org.docksweep.service.store.Stored;

/** Says that baselines of a test point up to an instant hold no longer; never changed. */
@Entity
@Table(name = "baseline_end")
class BaselineEnd extends Stored<BaselineEnd.Key> {
    @EmbeddedId
    private Key key;

    private String jobCode;

    protected BaselineEnd() {}

    BaselineEnd(AssetTag tag, String testPointCode, Instant endedAt, JobCode job) {
        this.key = new Key(tag.value(), testPointCode, endedAt);
        this.jobCode = job.value();
    }

    /** Whether it ended a baseline taken at one instant before another. */
    boolean ended(String testPointCode, Instant takenAt, Instant at) {
        return key.testPointCode.equals(testPointCode) && !key.endedAt.isBefore(takenAt) && key.endedAt.isBefore(at);
    }

    @Override
    public Key getId() {
        return key;
    }

    /** Cabinet, test point and instant. */
    @Embeddable
    static class Key implements Serializable {
        private static final long serialVersionUID = 1L;
        private String tag;
        private String testPointCode;
        private Instant endedAt;

        protected Key() {}

        Key(String tag, String testPointCode, Instant endedAt) {
            this.tag = tag;
            this.testPointCode = testPointCode;
            this.endedAt = endedAt;
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Key that
                    && tag.equals(that.tag)
                    && testPointCode.equals(that.testPointCode)
                    && endedAt.equals(that.endedAt);
        }

        @Override
        public int hashCode() {
            return Objects.hash(tag, testPointCode, endedAt);
        }
    }
}
