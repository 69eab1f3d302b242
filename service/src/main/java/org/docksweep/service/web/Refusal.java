package org.docksweep.service.web;

import java.util.List;
import org.docksweep.contract.Problem;
import org.docksweep.contract.ProblemTypes;

/** A request that is refused, with what is wrong and what to do next. Nothing of it is stored. */
public final class Refusal extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private static final int ERRORS_SHOWN = 100;

    private final transient Problem problem;

    private Refusal(String type, String title, int status, String detail, String field, String hint) {
        this(type, title, status, detail, field, hint, null);
    }

    private Refusal(
            String type,
            String title,
            int status,
            String detail,
            String field,
            String hint,
            List<Problem.Entry> errors) {
        super(detail);
        this.problem = new Problem(type, title, status, detail, null, field, hint, errors);
    }

    /**
     * 404.
     *
     * @param field parameter or field that names it, or null
     * @param detail what does not exist
     * @param hint what to do next
     * @return the refusal
     */
    public static Refusal notFound(String field, String detail, String hint) {
        return new Refusal(ProblemTypes.NOT_FOUND, "Not found", 404, detail, field, hint);
    }

    /**
     * 409: the id carries another body.
     *
     * @param detail which id, and what it belongs to
     * @param hint what to do next
     * @return the refusal
     */
    public static Refusal idReused(String detail, String hint) {
        return new Refusal(ProblemTypes.ID_REUSED, "Id used before", 409, detail, "id", hint);
    }

    /**
     * 409: not in this state.
     *
     * @param field field concerned, or null
     * @param detail the state, and what it forbids
     * @param hint what to do next
     * @return the refusal
     */
    public static Refusal wrongState(String field, String detail, String hint) {
        return new Refusal(ProblemTypes.WRONG_STATE, "Not possible now", 409, detail, field, hint);
    }

    /**
     * 400: a field has a wrong value.
     *
     * @param field path into the body, or name of the parameter
     * @param detail what it is and what was expected
     * @param hint what to do next
     * @return the refusal
     */
    public static Refusal badField(String field, String detail, String hint) {
        return new Refusal(ProblemTypes.BAD_FIELD, "Wrong value", 400, detail, field, hint);
    }

    /**
     * 400: several fields have wrong values.
     *
     * @param errors all of them, at least one
     * @return the refusal
     */
    public static Refusal badFields(List<Problem.Entry> errors) {
        Problem.Entry first = errors.get(0);
        return new Refusal(
                ProblemTypes.BAD_FIELD,
                "Wrong value",
                400,
                first.column() + ": " + first.message(),
                first.column(),
                "Correct what is listed and send the whole body again. Nothing was stored.",
                shown(errors));
    }

    /**
     * 400: the body cannot be read at all.
     *
     * @param detail where and why
     * @param hint what to do next
     * @return the refusal
     */
    public static Refusal unreadable(String detail, String hint) {
        return new Refusal(ProblemTypes.UNREADABLE, "Cannot be read", 400, detail, null, hint);
    }

    /**
     * 400: an import has errors.
     *
     * @param errors all of them, at least one
     * @return the refusal
     */
    public static Refusal importErrors(List<Problem.Entry> errors) {
        int count = errors.size();
        return new Refusal(
                ProblemTypes.IMPORT_ERRORS,
                "Import has errors",
                400,
                count + (count == 1 ? " error" : " errors")
                        + (count > ERRORS_SHOWN ? "; the first " + ERRORS_SHOWN + " are listed" : "")
                        + ". Nothing was stored.",
                null,
                "Correct the lines named and import the whole file again.",
                shown(errors));
    }

    /**
     * 413: the body is larger than allowed.
     *
     * @param limitBytes largest body allowed
     * @return the refusal
     */
    public static Refusal tooLarge(long limitBytes) {
        return new Refusal(
                ProblemTypes.TOO_LARGE,
                "Too large",
                413,
                "the body is larger than the " + limitBytes + " bytes allowed here",
                null,
                "Send less at once, or let the manager raise docksweep.limits. Nothing was stored.");
    }

    /**
     * 409: a job whose proof lacks something.
     *
     * @param job the job
     * @param missing what is missing, at least one
     * @return the refusal
     */
    public static Refusal notProved(String job, List<String> missing) {
        return new Refusal(
                ProblemTypes.NOT_PROVED,
                "Not proved",
                409,
                "job " + job + " cannot be signed off: " + String.join(" ", missing),
                "verb",
                "Do what is missing, then sign off.",
                shown(missing.stream()
                        .map(m -> new Problem.Entry(null, "verb", m))
                        .toList()));
    }

    /**
     * Any other refusal.
     *
     * @param type one of {@link ProblemTypes}
     * @param title title of the type
     * @param status HTTP status
     * @param detail what is wrong
     * @param hint what to do next
     * @return the refusal
     */
    public static Refusal of(String type, String title, int status, String detail, String hint) {
        return new Refusal(type, title, status, detail, null, hint);
    }

    private static List<Problem.Entry> shown(List<Problem.Entry> errors) {
        return List.copyOf(errors.subList(0, Math.min(ERRORS_SHOWN, errors.size())));
    }

    /**
     * The refusal as problem details.
     *
     * @param instance path that was asked for
     * @return the problem
     */
    public Problem problem(String instance) {
        return new Problem(
                problem.type(),
                problem.title(),
                problem.status(),
                problem.detail(),
                instance,
                problem.field(),
                problem.hint(),
                problem.errors());
    }
}
