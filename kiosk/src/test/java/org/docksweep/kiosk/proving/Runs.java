package org.docksweep.kiosk.proving;

import java.util.EnumSet;
import org.docksweep.contract.ProvingFaultKind;
import org.docksweep.contract.ProvingGround;
import org.docksweep.gate.LimitSet;

/** Options of runs for tests. */
final class Runs {
    private Runs() {}

    static ProvingOptions of(ProvingGround.Models models, long seed, int returns, int threads) {
        return new ProvingOptions(
                models,
                seed,
                returns,
                EnumSet.noneOf(ProvingFaultKind.class),
                EnumSet.allOf(Knowing.class),
                Severities.promised(),
                new ProvingOptions.Range(45, 70),
                -106,
                new ProvingOptions.Range(6, 34),
                0.01,
                0.02,
                5,
                1,
                threads,
                LimitSet.initial());
    }

    /** The same, with models taught so often. */
    static ProvingOptions taught(ProvingOptions like, int teachings) {
        return new ProvingOptions(
                like.models(),
                like.seed(),
                like.returns(),
                like.kinds(),
                like.knowing(),
                like.severities(),
                like.hallNoiseDb(),
                like.converterNoiseDb(),
                like.celsius(),
                like.unknownShare(),
                like.recordedShare(),
                like.goodUnits(),
                teachings,
                like.threads(),
                like.limits());
    }
}
