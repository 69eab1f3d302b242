package org.docksweep.service;

import java.time.LocalDate;
import java.util.List;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.InstalledDriver;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.PartSource;

/** A cabinet model whose driver models no other test knows, so that what is counted by driver model is this test's own. */
record OwnDrivers(String model, String cone, String horn) {

    static OwnDrivers register(Api api) {
        int number = House.next();
        OwnDrivers own = new OwnDrivers("GULL-" + number, "CONE-" + number, "HORN-" + number);
        String book = Api.MAPPER
                .writeValueAsString(House.book(own.model))
                .replace("DUNE-12", own.cone)
                .replace("REED-1", own.horn);
        Api.Answer answer = api.putText(ApiPaths.MODEL_BOOK, book, "application/json");
        if (answer.status() != 201) {
            throw new AssertionError(answer);
        }
        return own;
    }

    AssetTag newCabinet(Api api) {
        AssetTag tag = House.newTag();
        Api.Answer answer = api.put(
                ApiPaths.CABINETS + "/" + tag,
                new CabinetBody(
                        tag,
                        model,
                        "C-04",
                        CabinetStatus.OUT,
                        false,
                        List.of(
                                new InstalledDriver(
                                        "HF",
                                        horn,
                                        "H" + tag,
                                        "D" + tag,
                                        PartSource.ORIGINAL,
                                        LocalDate.of(2024, 5, 1)),
                                new InstalledDriver("LF", cone, "L" + tag, null, null, LocalDate.of(2023, 2, 1)))));
        if (answer.status() != 201) {
            throw new AssertionError(answer);
        }
        return tag;
    }
}
