package org.docksweep.service.cabinets;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import org.docksweep.contract.AssetKeys;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Gs1Key;
import org.docksweep.service.store.Stored;

/** A key on a label beside the asset tag; without a cabinet once the label was taken off. */
@Entity
@Table(name = "asset_key")
class AssetKeyRow extends Stored<String> {
    @Id
    private String keyValue;

    private String tag;

    @Version
    private int version;

    protected AssetKeyRow() {}

    AssetKeyRow(Gs1Key key) {
        this.keyValue = key.value();
    }

    String tag() {
        return tag;
    }

    Gs1Key key() {
        return new Gs1Key(keyValue);
    }

    void stickOn(AssetTag cabinet) {
        this.tag = cabinet.value();
    }

    void takeOff() {
        this.tag = null;
    }

    AssetKeys.Label label() {
        return new AssetKeys.Label(key(), new AssetTag(tag));
    }

    @Override
    public String getId() {
        return keyValue;
    }
}
