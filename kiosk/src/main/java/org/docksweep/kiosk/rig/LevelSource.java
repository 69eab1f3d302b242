package org.docksweep.kiosk.rig;

import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.sweep.Rig;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepPlans;

/** Where live levels come from. */
@FunctionalInterface
public interface LevelSource {
    /**
     * Listens until told to stop. Blocks.
     *
     * @param stopped asked often
     * @param hears takes the levels, several times a second where the rig can
     * @throws RigException if the rig cannot listen; says what to do
     */
    void listen(BooleanSupplier stopped, Consumer<List<ChannelLevel>> hears) throws RigException;

    /**
     * Levels of a rig that measures only in captures: of one quiet probe after the other.
     *
     * @param rig the rig
     * @return the source
     */
    static LevelSource ofProbes(Rig rig) {
        return (stopped, hears) -> {
            TestPoint point = StandardSet.testPoint(8);
            while (!stopped.getAsBoolean()) {
                hears.accept(ChannelLevel.of(
                        rig.play(SweepPlans.probe(point, rig.sampleRateHz()), TestPointKind.TERMINALS, share -> {
                            if (stopped.getAsBoolean()) {
                                rig.stop();
                            }
                        })));
            }
        };
    }
}
