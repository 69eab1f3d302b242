package org.docksweep.service.models;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.service.store.ParsedJson;
import org.docksweep.service.store.Stored;
import org.docksweep.service.store.StoredJson;

/** A cabinet model as stored. */
@Entity
@Table(name = "cabinet_model")
class CabinetModelRow extends Stored<String> {
    private static final ParsedJson<CabinetModel> PARSED = new ParsedJson<>(CabinetModel.class);

    @Id
    private String code;

    private String name;

    @Column(length = 1_000_000)
    private String bodyJson;

    @Version
    private int version;

    protected CabinetModelRow() {}

    CabinetModelRow(CabinetModel model) {
        this.code = model.code();
        replace(model);
    }

    /** Takes a newer description of the same model. */
    void replace(CabinetModel model) {
        this.name = model.name();
        this.bodyJson = StoredJson.write(model);
    }

    CabinetModel model() {
        return PARSED.of(code, bodyJson);
    }

    @Override
    public String getId() {
        return code;
    }
}
