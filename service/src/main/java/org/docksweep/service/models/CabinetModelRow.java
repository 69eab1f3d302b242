package org.docksweep.service.models;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.service.store.ParsedJson;
import org.docksweep.service.store.Question;
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

    /** The model of a code as stored; what the session holds and did not write yet is not in it. */
    static Question<CabinetModel> stored(String code) {
        return new Question<>(
                "select body_json from cabinet_model where code = ?",
                (row, number) -> PARSED.of(code, row.getString(1)),
                code);
    }

    @Override
    public String getId() {
        return code;
    }
}
