package org.docksweep.demo.rig;

import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.docksweep.contract.ProvingFault;
import org.docksweep.contract.ProvingGround;
import org.docksweep.contract.ProvingRig;
import org.docksweep.contract.ProvingUnit;
import org.docksweep.demo.DemoModels;
import org.docksweep.demo.HeldBackModels;
import org.docksweep.demo.drawn.DrawnFleet;
import org.docksweep.demo.physics.Load;
import org.docksweep.demo.physics.ProvingFaults;
import org.docksweep.demo.physics.VirtualCabinet;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.Require;
import org.hipparchus.complex.Complex;

/** The proving ground of the simulator: models of the demo house, and models held back. */
public final class VirtualProvingGround implements ProvingGround {
    private static final Complex NO_SOURCE = new Complex(1e-3);

    private final DrawnFleet all = new DrawnFleet(HeldBackModels.bookOfAll(), HeldBackModels.mechanicsOfAll());
    /** By cabinet model. */
    private final Map<String, DrawnFleet> drawn = new ConcurrentHashMap<>();

    @Override
    public ModelBook book(Models models, long seed) {
        return switch (models) {
            case TUNING -> DemoModels.book();
            case HELD_BACK -> HeldBackModels.book();
            case ALL -> all.book();
            case DRAWN -> drawn(seed);
        };
    }

    @Override
    public List<ProvingFault> faults(String modelCode) {
        return ProvingFaults.of(fleetOf(modelCode).book().cabinetModel(modelCode));
    }

    @Override
    public ProvingRig rig(long seed, double converterNoiseDb) {
        Require.inRange("converterNoiseDb", converterNoiseDb, -140, -40);
        return new VirtualProvingRig(seed, Electronics.drawn(seed).withNoiseDb(converterNoiseDb), this::cabinet);
    }

    @Override
    public double[][] impedanceOhm(ProvingUnit unit, String testPointCode, double[] frequencyHz) {
        Load load = cabinet(unit).load(testPointCode);
        double[][] ohm = new double[2][frequencyHz.length];
        for (int i = 0; i < frequencyHz.length; i++) {
            Complex z = load.at(frequencyHz[i], NO_SOURCE).impedanceOhm();
            ohm[0][i] = z.getRealPart();
            ohm[1][i] = z.getImaginaryPart();
        }
        return ohm;
    }

    private VirtualCabinet cabinet(ProvingUnit unit) {
        DrawnFleet fleet = fleetOf(unit.modelCode());
        return ProvingFaults.cabinet(fleet.book(), fleet.mechanics(), unit);
    }

    private ModelBook drawn(long seed) {
        DrawnFleet fleet = DrawnFleet.of(seed);
        fleet.book().cabinetModels().forEach(m -> drawn.putIfAbsent(m.code(), fleet));
        return fleet.book();
    }

    private DrawnFleet fleetOf(String modelCode) {
        return drawn.getOrDefault(modelCode, all);
    }
}
