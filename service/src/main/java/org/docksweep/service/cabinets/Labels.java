package org.docksweep.service.cabinets;

import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.docksweep.contract.AssetKeys;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Gs1Key;
import org.docksweep.service.web.Check;
import org.docksweep.service.web.Refusal;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Which labels beside the asset tag a cabinet carries. */
@Service
@Transactional
public class Labels {
    /** More labels than this on one cabinet is a mistake. */
    private static final int MOST = 20;

    private final Cabinets cabinets;
    private final AssetKeyRows rows;

    Labels(Cabinets cabinets, AssetKeyRows rows) {
        this.cabinets = cabinets;
        this.rows = rows;
    }

    /**
     * All labels of the fleet.
     *
     * @return labels in the order of their keys
     */
    @Transactional(readOnly = true)
    public List<AssetKeys.Label> all() {
        return rows.findByTagIsNotNullOrderByKeyValue().stream()
                .map(AssetKeyRow::label)
                .toList();
    }

    @Transactional(readOnly = true)
    AssetKeys of(AssetTag tag) {
        if (!cabinets.existsById(tag.value())) {
            throw Fleet.unknown(tag);
        }
        return new AssetKeys(rows.findByTagOrderByKeyValue(tag.value()).stream()
                .map(AssetKeyRow::key)
                .toList());
    }

    /** Replaces the labels of a cabinet: what is not named was taken off. */
    AssetKeys put(AssetTag tag, AssetKeys sent) {
        cabinets.findLocked(tag.value()).orElseThrow(() -> Fleet.unknown(tag));
        List<Gs1Key> keys = sent.keys();
        new Check()
                .present(keys, "keys")
                .that(
                        keys == null || keys.size() <= MOST && keys.stream().allMatch(Objects::nonNull),
                        "keys",
                        "must be at most " + MOST + " asset keys, none of them null")
                .refuseIfWrong();
        Set<Gs1Key> wanted = new LinkedHashSet<>(keys);
        Set<Gs1Key> there = new HashSet<>();
        for (AssetKeyRow row : rows.findByTagOrderByKeyValue(tag.value())) {
            there.add(row.key());
            if (!wanted.contains(row.key())) {
                row.takeOff();
            }
        }
        for (Gs1Key key : wanted) {
            if (!there.contains(key)) {
                stick(key, tag);
            }
        }
        rows.flush();
        return of(tag);
    }

    private void stick(Gs1Key key, AssetTag tag) {
        AssetKeyRow row = rows.findById(key.value()).orElse(null);
        if (row == null) {
            row = new AssetKeyRow(key);
            row.stickOn(tag);
            rows.save(row);
            return;
        }
        if (row.tag() != null) {
            throw Refusal.wrongState(
                    "keys",
                    "asset key " + key + " is on cabinet " + row.tag() + " already",
                    "One label belongs to one cabinet: take it off there first (PUT /api/cabinets/" + row.tag()
                            + "/asset-keys), or read the label again.");
        }
        row.stickOn(tag);
    }
}
