package org.docksweep.demo.physics;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverKind;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.DriverPosition;
import org.docksweep.fleet.Enclosure;
import org.docksweep.fleet.EnclosureKind;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.MotionalResonance;
import org.docksweep.fleet.NetworkElement;
import org.docksweep.fleet.TestPoint;

/**
 * Draws the true parameters of one unit: production spread and age around the model's nominal values. Spreads are
 * standard deviations of normal draws cut at two of them (so healthy units have no tails); sizes are common practice, no
 * source: Re 1.2 %, fs 3.5 %, Qms 8 %, Qes 4 %, inductance 3 %, box compliance 2 %, tuning 1.5 %, leakage 10 %,
 * crossover parts as their tolerance says.
 */
final class UnitBuilder {
    private static final double CUT = 2;
    private static final double REFERENCE_PRESSURE_PA = 20e-6;
    private static final double RATING_VOLTAGE_V = 2.83;
    private static final double HORN_FORCE_FACTOR_TM = 9;
    private static final double AIR_DENSITY_KG_PER_M3 = 1.2;
    private static final Map<LossyInductance, SemiInductance> MATCHED = new java.util.concurrent.ConcurrentHashMap<>();

    private final ModelBook book;
    private final Map<String, DriverMechanics> mechanics;
    private final CabinetModel model;
    private final Realism realism;
    private final Random random;
    private final double spread;
    private final double ageYears;

    UnitBuilder(
            ModelBook book,
            Map<String, DriverMechanics> mechanics,
            CabinetModel model,
            Realism realism,
            long seed,
            double spread,
            double ageYears) {
        this.book = book;
        this.mechanics = mechanics;
        this.model = model;
        this.realism = realism;
        this.random = new Random(seed * 0x9E3779B97F4A7C15L + model.code().hashCode());
        this.spread = spread;
        this.ageYears = ageYears;
    }

    TrueUnit build() {
        Map<String, TrueDriver> drivers = new LinkedHashMap<>();
        for (DriverPosition position : model.positions()) {
            drivers.put(position.code(), driver(position));
        }
        List<TrueBox> boxes = new ArrayList<>();
        for (Enclosure enclosure : model.enclosures()) {
            boxes.add(box(enclosure));
        }
        Map<String, List<NetworkElement>> networks = new HashMap<>();
        for (TestPoint point : model.testPoints()) {
            networks.put(point.code(), point.elements().stream().map(this::part).toList());
        }
        return new TrueUnit(drivers, boxes, networks);
    }

    private double around(double standardDeviation) {
        double draw = random.nextGaussian();
        while (Math.abs(draw) > CUT) {
            draw = random.nextGaussian();
        }
        return Math.exp(spread * standardDeviation * draw);
    }

    private TrueDriver driver(DriverPosition position) {
        DriverModel nominal = book.driverModel(position.driverModelCode());
        DriverMechanics mech = mechanics.get(nominal.code());
        if (mech == null) {
            throw new IllegalArgumentException("driver model " + nominal.code() + " has no mechanical values");
        }
        double resistance = nominal.dcResistanceOhm() * around(0.012);
        double inductanceSpread = around(0.03);
        BlockedInductance inductance = inductance(nominal, inductanceSpread);
        // a run-in suspension softens a little with the years and stays there
        double softening = 1 - 0.02 * spread * Math.min(1, ageYears / 5);
        double freeHz = nominal.resonances().get(0).frequencyHz() * around(0.035) * softening;
        double qms = nominal.qms() * around(0.08);
        double qes = nominal.qes() * around(0.04);
        double creep = realism == Realism.FULL ? 0.055 * around(0.1) : 0;
        double sensitivity = around(0.03);
        if (nominal.kind() == DriverKind.COMPRESSION) {
            List<MotionalResonance> terms = hornTerms(nominal);
            double pressurePa = REFERENCE_PRESSURE_PA * Math.pow(10, mech.sensitivityDb() / 20);
            double passBandOhm = 1.15 * nominal.dcResistanceOhm();
            return new TrueDriver(
                    position.code(),
                    nominal.kind(),
                    resistance,
                    inductance,
                    HORN_FORCE_FACTOR_TM,
                    0,
                    0,
                    0,
                    0,
                    terms.get(0).frequencyHz(),
                    mech.effectiveAreaCm2() * 1e-4,
                    terms,
                    pressurePa / RATING_VOLTAGE_V * passBandOhm * sensitivity,
                    mech.maxExcursionMm() * 1e-3,
                    mech.breakupHz());
        }
        double mass = movingMassKg(nominal, mech) * sensitivity;
        double omega = 2 * Math.PI * freeHz;
        double forceFactor = Math.sqrt(omega * mass * nominal.dcResistanceOhm() / qes);
        double totalLossShare = 1 / qms;
        double creepLossShare = creep * Math.PI / 2 / Math.log(10);
        return new TrueDriver(
                position.code(),
                nominal.kind(),
                resistance,
                inductance,
                forceFactor,
                mass,
                omega * omega * mass,
                omega * mass * Math.max(0.2 * totalLossShare, totalLossShare - creepLossShare),
                creep,
                freeHz,
                mech.effectiveAreaCm2() * 1e-4,
                List.of(),
                0,
                mech.maxExcursionMm() * 1e-3,
                mech.breakupHz());
    }

    private BlockedInductance inductance(DriverModel nominal, double factor) {
        LossyInductance law =
                new LossyInductance(nominal.lossyInductanceK() * factor, nominal.lossyInductanceExponent());
        if (realism == Realism.PLAIN || nominal.lossyInductanceK() == 0) {
            return law;
        }
        SemiInductance semi = MATCHED.computeIfAbsent(
                new LossyInductance(nominal.lossyInductanceK(), nominal.lossyInductanceExponent()),
                SemiInductance::near);
        return new SemiInductance(
                semi.outerInductanceH() * factor * around(0.02),
                semi.ironInductanceH() * factor * around(0.02),
                semi.semiInductance() * factor,
                semi.shuntResistanceOhm() * factor);
    }

    private List<MotionalResonance> hornTerms(DriverModel nominal) {
        List<MotionalResonance> terms = new ArrayList<>();
        for (MotionalResonance term : nominal.resonances()) {
            boolean main = terms.isEmpty();
            terms.add(new MotionalResonance(
                    term.frequencyHz() * around(main ? 0.025 : 0.02),
                    term.q() * around(main ? 0.05 : 0.08),
                    term.peakResistanceOhm() * around(main ? 0.05 : 0.10)));
        }
        return List.copyOf(terms);
    }

    /**
     * Moving mass that gives the sensitivity: piston-band pressure of a source in a wall,
     * {@code p = rho Sd Bl U / (2 pi Re Mms)}, with {@code Bl^2 = 2 pi fs Mms Re / Qes}.
     */
    private static double movingMassKg(DriverModel nominal, DriverMechanics mech) {
        double pressurePa = REFERENCE_PRESSURE_PA * Math.pow(10, mech.sensitivityDb() / 20);
        double area = mech.effectiveAreaCm2() * 1e-4;
        double resistance = nominal.dcResistanceOhm();
        double rootShare = AIR_DENSITY_KG_PER_M3 * area * RATING_VOLTAGE_V / (2 * Math.PI * resistance * pressurePa);
        double omega = 2 * Math.PI * nominal.resonances().get(0).frequencyHz();
        return omega * resistance / nominal.qes() * rootShare * rootShare;
    }

    private TrueBox box(Enclosure enclosure) {
        if (enclosure.kind() != EnclosureKind.CLOSED && enclosure.kind() != EnclosureKind.VENTED) {
            return new TrueBox(enclosure.id(), enclosure.kind(), enclosure.positionCodes(), 0, 0, 0, 0, 0, 0, 0);
        }
        DriverModel nominal =
                book.driverModelAt(model, enclosure.positionCodes().get(0));
        DriverMechanics mech = mechanics.get(nominal.code());
        double freeHz = nominal.resonances().get(0).frequencyHz();
        double omega = 2 * Math.PI * freeHz;
        double area = mech.effectiveAreaCm2() * 1e-4;
        double driverCompliance = area * area / (omega * omega * movingMassKg(nominal, mech));
        double compliance = enclosure.positionCodes().size() * driverCompliance / enclosure.complianceRatio();
        boolean vented = enclosure.kind() == EnclosureKind.VENTED;
        double tuningHz = vented ? enclosure.tuningHz() * around(0.015) : 0;
        boolean full = realism == Realism.FULL;
        return new TrueBox(
                enclosure.id(),
                enclosure.kind(),
                enclosure.positionCodes(),
                compliance * around(0.02),
                vented ? enclosure.tuningHz() : freeHz * Math.sqrt(1 + enclosure.complianceRatio()),
                enclosure.leakageLossQ() * around(0.10),
                tuningHz,
                full ? 60 * around(0.1) : 0,
                full ? (260 - 1.2 * freeHz) * around(0.05) : 0,
                full ? 0.012 * around(0.3) : 0);
    }

    private NetworkElement part(NetworkElement element) {
        if (element instanceof NetworkElement.Resistor r) {
            return new NetworkElement.Resistor(
                    r.id(), r.nodeA(), r.nodeB(), r.resistanceOhm() * around(r.toleranceRel()), r.toleranceRel());
        }
        if (element instanceof NetworkElement.Inductor l) {
            return new NetworkElement.Inductor(
                    l.id(),
                    l.nodeA(),
                    l.nodeB(),
                    l.inductanceH() * around(l.toleranceRel()),
                    l.seriesResistanceOhm() * around(0.02),
                    l.toleranceRel());
        }
        if (element instanceof NetworkElement.Capacitor c) {
            double drying = 1 - 0.01 * spread * Math.min(1, ageYears / 8);
            return new NetworkElement.Capacitor(
                    c.id(),
                    c.nodeA(),
                    c.nodeB(),
                    c.capacitanceF() * around(c.toleranceRel()) * drying,
                    c.seriesResistanceOhm() * around(0.1),
                    c.toleranceRel());
        }
        return element;
    }
}
