package org.docksweep.service.models;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import org.docksweep.fleet.DriverModel;
import org.docksweep.service.store.Stored;
import org.docksweep.service.store.StoredJson;

/** A driver model as stored. */
@Entity
@Table(name = "driver_model")
class DriverModelRow extends Stored<String> {
    @Id
    private String code;

    @Column(length = 1_000_000)
    private String bodyJson;

    @Version
    private int version;

    protected DriverModelRow() {}

    DriverModelRow(DriverModel model) {
        this.code = model.code();
        replace(model);
    }

    /** Takes a newer description of the same model. */
    void replace(DriverModel model) {
        this.bodyJson = StoredJson.write(model);
    }

    DriverModel model() {
        return StoredJson.read(bodyJson, DriverModel.class);
    }

    @Override
    public String getId() {
        return code;
    }
}
