package org.docksweep.demo.rig;

/** Which moment of the demo house the virtual rig stands in. */
public enum Moment {
    /** Before the hire: every cabinet healthy, the hall near 20 C; baselines and references are taught here. */
    BEFORE_HIRE,
    /** At the return: with what happened on the hire, at the night's temperature. */
    AT_RETURN
}
