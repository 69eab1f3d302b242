package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.AssetKeys;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.Gs1Key;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** Labels beside the asset tag: who carries which, and what a kiosk learns of it. */
@ExtendWith(RunningService.class)
class LabelsTest {
    private final Api api;
    private final AssetTag tag;
    private final Gs1Key key = new Gs1Key("(8004)0614141" + House.next());

    LabelsTest(Api api) {
        this.api = api;
        this.tag = House.newCabinet(api, House.newModel(api), CabinetStatus.READY);
    }

    private static String path(AssetTag tag) {
        return ApiPaths.CABINETS + "/" + tag + ApiPaths.ASSET_KEYS;
    }

    private List<AssetKeys.Label> labels() {
        return api.get(ApiPaths.KIOSK_SNAPSHOT).as(KioskSnapshot.class).labels();
    }

    @Test
    void reachesTheKioskAndLeavesItAgain() {
        assertThat(api.put(path(tag), new AssetKeys(List.of(key))).status()).isEqualTo(200);
        assertThat(api.get(path(tag)).as(AssetKeys.class).keys()).containsExactly(key);
        assertThat(labels()).contains(new AssetKeys.Label(key, tag));

        assertThat(api.put(path(tag), new AssetKeys(List.of())).status()).isEqualTo(200);
        assertThat(labels()).extracting(AssetKeys.Label::key).doesNotContain(key);
    }

    @Test
    void belongsToOneCabinetAtATime() {
        AssetTag other = House.newCabinet(api, House.newModel(api), CabinetStatus.READY);
        api.put(path(tag), new AssetKeys(List.of(key)));

        Api.Answer refused = api.put(path(other), new AssetKeys(List.of(key)));
        assertThat(refused.status()).isEqualTo(409);
        assertThat(refused.problem().type()).isEqualTo(ProblemTypes.WRONG_STATE);
        assertThat(refused.problem().detail()).contains(tag.value());
        assertThat(api.get(path(other)).as(AssetKeys.class).keys()).isEmpty();

        api.put(path(tag), new AssetKeys(List.of()));
        assertThat(api.put(path(other), new AssetKeys(List.of(key))).status()).isEqualTo(200);
        assertThat(labels()).contains(new AssetKeys.Label(key, other));
    }

    @Test
    void refusesAWrongCheckDigitAndAnUnknownCabinet() {
        Api.Answer wrong = api.put(path(tag), java.util.Map.of("keys", List.of("(8003)00614141123453400")));
        assertThat(wrong.status()).isEqualTo(400);
        assertThat(wrong.problem().detail()).contains("check digit");
        assertThat(api.put(path(House.newTag()), new AssetKeys(List.of(key))).status())
                .isEqualTo(404);
    }
}
