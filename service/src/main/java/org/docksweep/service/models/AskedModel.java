package org.docksweep.service.models;

import org.docksweep.fleet.CabinetModel;
import org.docksweep.service.store.Question;
import org.docksweep.service.web.Refusal;

/** A cabinet model that is asked for together with other things. What this transaction changed itself is not seen. */
public final class AskedModel {
    private final String code;
    private final String field;
    private final Question<CabinetModel> question;

    /**
     * Still to be asked.
     *
     * @param code its code
     * @param field field that named it, for the refusal
     */
    public AskedModel(String code, String field) {
        this.code = code;
        this.field = field;
        this.question = CabinetModelRow.stored(code);
    }

    /**
     * The question.
     *
     * @return what to ask before {@link #model}
     */
    public Question<CabinetModel> question() {
        return question;
    }

    /**
     * The model.
     *
     * @return the model as stored
     * @throws Refusal if there is none
     */
    public CabinetModel model() {
        return question.answers().stream().findFirst().orElseThrow(() -> Models.noCabinetModel(code, field));
    }
}
