package org.docksweep.service.web;

import java.util.ArrayList;
import java.util.List;
import org.docksweep.contract.Problem;

/** Collects everything that is wrong with a body, then refuses once. */
public final class Check {
    private final List<Problem.Entry> errors = new ArrayList<>();

    /**
     * Notes an error unless a condition holds.
     *
     * @param condition what must hold
     * @param field path into the body
     * @param message what is wrong and what was expected
     * @return this
     */
    public Check that(boolean condition, String field, String message) {
        if (!condition) {
            errors.add(new Problem.Entry(null, field, message));
        }
        return this;
    }

    /**
     * Notes an error unless a value is there.
     *
     * @param value value
     * @param field path into the body
     * @return this
     */
    public Check present(Object value, String field) {
        return that(value != null, field, "is missing");
    }

    /**
     * Notes an error unless a text is there, fits its column and holds no control characters.
     *
     * @param text text
     * @param mostCharacters most characters that fit
     * @param field path into the body
     * @return this
     */
    public Check text(String text, int mostCharacters, String field) {
        if (text == null || text.isBlank()) {
            return that(false, field, "must not be empty");
        }
        return optionalText(text, mostCharacters, field);
    }

    /**
     * Like {@link #text}, but null is fine.
     *
     * @param text text or null
     * @param mostCharacters most characters that fit
     * @param field path into the body
     * @return this
     */
    public Check optionalText(String text, int mostCharacters, String field) {
        if (text == null) {
            return this;
        }
        that(
                text.length() <= mostCharacters,
                field,
                "has " + text.length() + " characters, at most " + mostCharacters + " are allowed");
        return that(
                text.chars().noneMatch(Character::isISOControl), field, "holds control characters; send plain text");
    }

    /**
     * Refuses when anything was noted.
     *
     * @throws Refusal listing every error
     */
    public void refuseIfWrong() {
        if (!errors.isEmpty()) {
            throw Refusal.badFields(errors);
        }
    }
}
