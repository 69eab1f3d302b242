package org.docksweep.service.store;

import jakarta.persistence.MappedSuperclass;
import jakarta.persistence.PostLoad;
import jakarta.persistence.PostPersist;
import jakarta.persistence.Transient;
import org.springframework.data.domain.Persistable;

/**
 * A row whose key is made by the client or by the trade. It knows by itself whether it is new, so that saving it
 * inserts without looking first, and a second row with its key is an error instead of an overwrite.
 *
 * @param <K> key type
 */
@MappedSuperclass
public abstract class Stored<K> implements Persistable<K> {
    @Transient
    private boolean inDatabase;

    @Override
    @Transient
    public boolean isNew() {
        return !inDatabase;
    }

    @PostLoad
    @PostPersist
    void foundInDatabase() {
        inDatabase = true;
    }
}
