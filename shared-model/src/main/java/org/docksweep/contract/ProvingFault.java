package org.docksweep.contract;

import java.util.List;
import org.docksweep.fleet.Require;

/**
 * A fault that one cabinet model can have.
 *
 * @param kind what is wrong
 * @param target where, as {@link ProvingFaultKind} says
 * @param positionCodes driver positions a person would rightly be sent to
 */
public record ProvingFault(ProvingFaultKind kind, String target, List<String> positionCodes) {
    public ProvingFault {
        if (kind == null) {
            throw new IllegalArgumentException("proving fault: kind is missing");
        }
        Require.text("proving fault " + kind + " target", target);
        positionCodes = Require.copy("proving fault " + kind + " positionCodes", positionCodes);
    }
}
