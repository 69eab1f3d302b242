package org.docksweep.service.parts;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import org.docksweep.fleet.Part;
import org.docksweep.service.store.Stored;
import org.docksweep.service.store.StoredJson;

/** A part of the catalogue and how many pieces are in stock. Stock never goes below zero. */
@Entity
@Table(name = "part")
class PartRow extends Stored<String> {
    @Id
    private String number;

    @Column(length = 20_000)
    private String bodyJson;

    private int inStock;

    @Version
    private int version;

    protected PartRow() {}

    PartRow(Part part) {
        this.number = part.number();
        replace(part);
    }

    /** Takes a newer description of the same part. */
    void replace(Part part) {
        this.bodyJson = StoredJson.write(part);
    }

    /** Adds pieces, or takes them with a negative change; the caller has checked that there are enough. */
    void change(int pieces) {
        if (inStock + pieces < 0) {
            throw new IllegalStateException("part " + number + ": " + inStock + " in stock, change " + pieces);
        }
        inStock += pieces;
    }

    boolean says(Part part) {
        return bodyJson.equals(StoredJson.write(part));
    }

    Part part() {
        return StoredJson.read(bodyJson, Part.class);
    }

    int inStock() {
        return inStock;
    }

    @Override
    public String getId() {
        return number;
    }
}
