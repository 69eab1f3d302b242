package org.docksweep.survival;

/** What the lives of some parts say about a Weibull distribution: a fit, or that they do not say enough. */
public sealed interface WeibullAnswer permits WeibullFit, WeibullAnswer.Unsettled {

    /**
     * The lives do not settle a distribution.
     *
     * @param why why not
     * @param failures failures seen
     */
    record Unsettled(Why why, int failures) implements WeibullAnswer {}

    /** Why no distribution can be given. */
    enum Why {
        /** Fewer failures than {@link WeibullFit#FEWEST_FAILURES}. */
        TOO_FEW_FAILURES,
        /** The failures lie so close together, or so early, that the likelihood has no maximum within reason. */
        NO_MAXIMUM
    }
}
