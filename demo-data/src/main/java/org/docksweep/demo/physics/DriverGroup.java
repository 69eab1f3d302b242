package org.docksweep.demo.physics;

import java.util.List;
import java.util.function.Function;
import org.docksweep.fleet.NetworkElement;
import org.hipparchus.complex.Complex;

/**
 * Drivers that share one enclosure: cones coupled through the air of their box, or one compression driver on its horn.
 *
 * <p>Cone d: {@code Bl i = Zm v + Sd p}, box {@code p = Zab sum(Sd v)}, coil {@code u = Zb i + Bl v}.
 */
final class DriverGroup {
    private static final double AIR_DENSITY_KG_PER_M3 = 1.2;
    private static final double LISTENING_DISTANCE_M = 1;

    private final List<DriverCondition> members;
    private final List<NetworkElement> elements;
    private final TrueBox box;

    /**
     * Makes a group.
     *
     * @param members the drivers, those in the network first
     * @param elements the network's driver elements, in the order of the first members; members beyond have open leads
     * @param box the enclosure
     */
    DriverGroup(List<DriverCondition> members, List<NetworkElement> elements, TrueBox box) {
        this.members = members;
        this.elements = elements;
        this.box = box;
    }

    List<NetworkElement> elements() {
        return elements;
    }

    double rubDb() {
        return members.stream().mapToDouble(DriverCondition::rubDb).max().orElse(Double.NEGATIVE_INFINITY);
    }

    boolean hasCones() {
        return members.get(0).isCone();
    }

    private int rubbingMember() {
        for (int i = 0; i < members.size(); i++) {
            if (members.get(i).rubDb() > Double.NEGATIVE_INFINITY) {
                return i;
            }
        }
        return 0;
    }

    Solved at(double omega) {
        return members.get(0).isCone() ? new Cones(omega) : new Horn(omega);
    }

    /**
     * Sound and movement of a group.
     *
     * @param pressurePa pressure at 1 m
     * @param excursion share of the limit, of the member that rubs, else of the first
     */
    record Sound(Complex pressurePa, Complex excursion) {}

    /** A group solved at one frequency. */
    interface Solved {
        /** Branch admittance matrix of the elements, in siemens. */
        Complex[][] admittance();

        /** Sound for given voltages across the elements. */
        Sound sound(Function<NetworkElement, Complex> across);
    }

    private final class Horn implements Solved {
        private final double omega;
        private final DriverCondition driver = members.get(0);
        private final Complex motional;
        private final Complex admittance;

        Horn(double omega) {
            this.omega = omega;
            this.motional = driver.hornMotionalOhm(omega);
            this.admittance = driver.blockedOhm(omega).add(motional).reciprocal();
        }

        @Override
        public Complex[][] admittance() {
            return new Complex[][] {{admittance}};
        }

        @Override
        public Sound sound(Function<NetworkElement, Complex> across) {
            Complex current = across.apply(elements.get(0)).multiply(admittance);
            double force = driver.driver().forceFactorTm();
            Complex displacement = current.multiply(motional)
                    .divide(new Complex(0, omega * force))
                    .divide(driver.driver().maxExcursionM());
            return new Sound(current.multiply(driver.hornPressurePerAmpere(omega)), displacement);
        }
    }

    private final class Cones implements Solved {
        private final double omega;
        private final Complex[][] mobility;
        private final Complex boxImpedance;
        private final Complex[][] admittance;

        Cones(double omega) {
            this.omega = omega;
            this.boxImpedance = box.loadsDrivers() ? box.impedance(omega) : Complex.ZERO;
            int n = members.size();
            Complex[][] mechanical = Dense.zeros(n, n);
            for (int i = 0; i < n; i++) {
                for (int k = 0; k < n; k++) {
                    mechanical[i][k] = boxImpedance.multiply(area(i) * area(k));
                }
                mechanical[i][i] = mechanical[i][i].add(members.get(i).mechanicalImpedance(omega));
            }
            this.mobility = Dense.inverse(mechanical);
            Complex[][] electrical = Dense.zeros(elements.size(), elements.size());
            for (int i = 0; i < elements.size(); i++) {
                for (int k = 0; k < elements.size(); k++) {
                    electrical[i][k] = mobility[i][k].multiply(force(i) * force(k));
                }
                electrical[i][i] = electrical[i][i].add(members.get(i).blockedOhm(omega));
            }
            this.admittance = Dense.inverse(electrical);
        }

        private double area(int i) {
            return members.get(i).driver().areaM2();
        }

        private double force(int i) {
            return members.get(i).forceFactorTm();
        }

        @Override
        public Complex[][] admittance() {
            return admittance;
        }

        @Override
        public Sound sound(Function<NetworkElement, Complex> across) {
            int n = members.size();
            Complex[] forces = new Complex[n];
            java.util.Arrays.fill(forces, Complex.ZERO);
            for (int i = 0; i < elements.size(); i++) {
                for (int k = 0; k < elements.size(); k++) {
                    Complex current = admittance[i][k].multiply(across.apply(elements.get(k)));
                    forces[i] = forces[i].add(current.multiply(force(i)));
                }
            }
            Complex front = Complex.ZERO;
            Complex inside = Complex.ZERO;
            Complex watched = Complex.ZERO;
            int watchedMember = rubbingMember();
            for (int i = 0; i < n; i++) {
                Complex velocity = Complex.ZERO;
                for (int k = 0; k < n; k++) {
                    velocity = velocity.add(mobility[i][k].multiply(forces[k]));
                }
                DriverCondition member = members.get(i);
                Complex shape = Shapes.lowPass(omega, member.driver().breakupHz(), 2);
                front = front.add(velocity.multiply(shape).multiply(area(i) * member.soundFactor()));
                inside = inside.add(velocity.multiply(area(i)));
                if (i == watchedMember) {
                    watched = velocity.divide(
                            new Complex(0, omega * member.driver().maxExcursionM()));
                }
            }
            Complex openings = box.loadsDrivers()
                    ? boxImpedance
                            .multiply(inside)
                            .multiply(box.portAdmittance(omega).add(box.leakAdmittance()))
                    : Complex.ZERO;
            // what leaves through port and leaks is pushed by the rear of the cones, hence against their front
            Complex net = front.subtract(openings);
            double radiation = AIR_DENSITY_KG_PER_M3 / (2 * Math.PI * LISTENING_DISTANCE_M);
            return new Sound(net.multiply(new Complex(0, omega * radiation)), watched);
        }
    }
}
