package org.docksweep.demo.rig;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import org.docksweep.demo.DemoModels;
import org.docksweep.demo.drawn.DrawnFleet;
import org.docksweep.demo.physics.Climate;
import org.docksweep.demo.physics.DriverMechanics;
import org.docksweep.demo.physics.Fault;
import org.docksweep.demo.physics.FaultKind;
import org.docksweep.demo.physics.Load;
import org.docksweep.demo.physics.VirtualCabinet;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.gate.Baseline;
import org.docksweep.gate.Knowledge;
import org.docksweep.gate.LimitSet;
import org.docksweep.gate.PointReference;
import org.docksweep.gate.ReferenceTeacher;
import org.docksweep.gate.SharedScatter;
import org.docksweep.suspect.AmbiguityGroups;
import org.docksweep.suspect.Explanation;
import org.docksweep.suspect.Severities;
import org.docksweep.suspect.Suspect;
import org.docksweep.suspect.SuspectRanking;
import org.docksweep.sweep.FrequencyGrid;
import org.docksweep.sweep.ImpedanceCurve;
import org.hipparchus.complex.Complex;

/**
 * What the gate's sizes (spreads, floors, discrepancy) were sized on: the demo's own models, curves taken straight from the
 * simulator's solver with noise, contact and calibration error added, without rendering a recording. Temperatures differ between
 * baseline and return; references come from five units.
 *
 * <pre>
 * mvn -B -q -pl demo-data -am test-compile
 * mvn -B -q -pl demo-data org.codehaus.mojo:exec-maven-plugin:java -Dexec.classpathScope=test \
 *     -Dexec.mainClass=org.docksweep.demo.rig.GateStudy -Dexec.args="soft 4 701"
 * </pre>
 *
 * Arguments: {@code soft}, {@code hard}, {@code healthy} or {@code groups}; rounds (default 2; each teaches anew); first seed (default 1,
 * below 1000: others are kept from tuning); beginning of "MODEL POINT" to do only that, or ""; seed of drawn models to do these instead of the
 * demo's, or ""; {@code baseline} or {@code reference} to do only cabinets that have the one or only the other.
 *
 * <p>As in a house, spreads are learned from the references of all models together ({@link SharedScatter}).
 */
public final class GateStudy {
    static final String[][] POINTS = {
        {"SPIN12", "IN"}, {"PEBL8", "IN"}, {"HEAD3", "IN"}, {"UNDR215", "IN"}, {"DUNE15B", "LF"}, {"DUNE15B", "HF"}
    };
    private static final LimitSet LIMITS = LimitSet.initial();

    private final ModelBook book;
    private final Map<String, DriverMechanics> mechanics;
    private final SplittableRandom random;
    /** References of all points of the models, taught when first needed; one study has one fleet. */
    private static final List<PointReference> HOUSE = new ArrayList<>();

    GateStudy(long seed) {
        this(seed, DemoModels.book(), DemoModels.mechanics());
    }

    GateStudy(long seed, ModelBook book, Map<String, DriverMechanics> mechanics) {
        this.random = new SplittableRandom(seed);
        this.book = book;
        this.mechanics = mechanics;
    }

    record Taken(ImpedanceCurve curve, double ambientCelsius) {}

    /** One sweep of a cabinet on some day. */
    Taken sweep(VirtualCabinet cabinet, TestPoint point) {
        double ambient = 8 + 20 * random.nextDouble();
        double truck = ambient + 10 * random.nextDouble() - 5;
        double coil = truck + (random.nextInt(4) == 0 ? 10 * random.nextDouble() : 0);
        double contact = 0.02 + 0.13 * random.nextDouble() - 0.05;
        VirtualCabinet there = cabinet.at(new Climate(coil, truck, truck, (truck + ambient) / 2));
        Load load = there.load(point.code());
        double[] hz = FrequencyGrid.within(
                point.levelMask().lowestHz() * 1.1, Math.min(point.levelMask().highestHz(), 20_000) / 1.1);
        double[] re = new double[hz.length];
        double[] im = new double[hz.length];
        double[] u = new double[hz.length];
        double gain = 1 + 0.0003 * random.nextGaussian();
        double tilt = 0.0003 * random.nextGaussian();
        for (int i = 0; i < hz.length; i++) {
            Complex z = load.at(hz[i], Complex.ONE).impedanceOhm().add(contact);
            double size = z.norm();
            double sigma = 0.0004 * size;
            double error = gain + tilt * Math.log(hz[i] / 1000) / 3;
            re[i] = z.getReal() * error + sigma * random.nextGaussian();
            im[i] = z.getImaginary() * error + sigma * random.nextGaussian();
            u[i] = Math.hypot(sigma, 0.0006 * size);
        }
        return new Taken(new ImpedanceCurve(hz, re, im, u), ambient);
    }

    PointReference teach(CabinetModel model, TestPoint point, long seed, int units) {
        List<ReferenceTeacher.Unit> lessons = new ArrayList<>();
        for (int n = 0; n < units; n++) {
            VirtualCabinet good =
                    VirtualCabinet.produced(book, mechanics, model.code(), seed + n, 10 * random.nextDouble());
            Taken taken = sweep(good, point);
            lessons.add(new ReferenceTeacher.Unit(taken.curve(), null, taken.ambientCelsius()));
        }
        return ReferenceTeacher.teach(book, model.code(), point.code(), lessons);
    }

    private static final class Count {
        int n;
        int missed;
        int first;
        int second;
        final Map<String, Integer> said = new LinkedHashMap<>();
    }

    /** Runs and prints. */
    public static void main(String[] a) {
        String what = a.length > 0 ? a[0] : "soft";
        int rounds = a.length > 1 ? Integer.parseInt(a[1]) : 2;
        long seed = a.length > 2 ? Long.parseLong(a[2]) : 1;
        String only = a.length > 3 ? a[3] : "";
        DrawnFleet drawn = a.length > 4 && !a[4].isEmpty() ? DrawnFleet.of(Long.parseLong(a[4])) : null;
        String knowing = a.length > 5 ? a[5] : "";
        for (boolean own : new boolean[] {true, false}) {
            if (knowing.equals(own ? "reference" : "baseline")) {
                continue;
            }
            for (String[] name : drawn == null ? POINTS : terminals(drawn.book())) {
                if (!(name[0] + " " + name[1]).startsWith(only)) {
                    continue;
                }
                GateStudy study =
                        drawn == null ? new GateStudy(seed) : new GateStudy(seed, drawn.book(), drawn.mechanics());
                if (what.equals("groups")) {
                    study.groups(name, seed, own);
                } else {
                    study.run(what, name, rounds, seed, own);
                }
            }
        }
    }

    private static String[][] terminals(ModelBook book) {
        return book.cabinetModels().stream()
                .flatMap(m -> m.testPoints().stream()
                        .filter(p -> p.kind() != TestPointKind.LINE_INPUT)
                        .map(p -> new String[] {m.code(), p.code()}))
                .toArray(String[][]::new);
    }

    private void groups(String[] name, long seed, boolean own) {
        CabinetModel model = book.cabinetModel(name[0]);
        TestPoint point = model.testPoint(name[1]);
        Knowledge knowledge = Knowledge.nominal(book, model, point).taughtBy(teach(model, point, seed, 5));
        if (own) {
            Taken before = sweep(VirtualCabinet.produced(book, mechanics, model.code(), seed + 10, 5), point);
            knowledge = knowledge.sharpenedBy(baseline(point, before));
        }
        AmbiguityGroups groups = AmbiguityGroups.of(
                book, model, point, knowledge.at(20.0), own ? Severities.WITH_BASELINE : Severities.WITH_REFERENCE);
        System.out.printf(
                Locale.ROOT,
                "%s %s %s, across ways: %b%n%s%n",
                own ? "OWN" : "REF",
                name[0],
                name[1],
                groups.mixesWays(model),
                groups.table());
    }

    private static Baseline baseline(TestPoint point, Taken before) {
        return new Baseline(
                new AssetTag("TST-0001"), point.code(), Instant.EPOCH, before.ambientCelsius(), before.curve(), null);
    }

    /** The reference with what those of all other points say of spreads; those are taught once. */
    private PointReference inHouse(PointReference reference, long seed) {
        if (HOUSE.isEmpty()) {
            GateStudy others = new GateStudy(seed + 7, book, mechanics);
            for (String[] name : terminals(book)) {
                CabinetModel model = book.cabinetModel(name[0]);
                HOUSE.add(others.teach(model, model.testPoint(name[1]), seed, 5));
            }
        }
        List<PointReference> all = new ArrayList<>(List.of(reference));
        HOUSE.stream()
                .filter(r -> !r.cabinetModelCode().equals(reference.cabinetModelCode())
                        || !r.testPointCode().equals(reference.testPointCode()))
                .forEach(all::add);
        return SharedScatter.over(all).get(0);
    }

    private void run(String what, String[] name, int rounds, long seed, boolean own) {
        CabinetModel model = book.cabinetModel(name[0]);
        TestPoint point = model.testPoint(name[1]);
        List<Double> chi = new ArrayList<>();
        List<Double> suspicion = new ArrayList<>();
        int healthyFails = 0;
        int watch = 0;
        int healthyN = 0;
        long nanos = 0;
        int judged = 0;
        int named = 0;
        int namedFirst = 0;
        int namedSecond = 0;
        Map<String, Count> counts = new LinkedHashMap<>();
        List<Fault> faults = what.equals("soft")
                ? StudyFaults.soft(book, model, point, own)
                : what.equals("hard") ? StudyFaults.hard(model, point) : List.of();
        int healthyPerRound = what.equals("healthy") ? 25 : 6;
        for (int round = 0; round < rounds; round++) {
            PointReference reference = inHouse(teach(model, point, seed + 100 * round, 5), seed);
            Knowledge taught = Knowledge.nominal(book, model, point).taughtBy(reference);
            AmbiguityGroups groups = AmbiguityGroups.of(book, model, point, reference);
            for (int k = 0; k < healthyPerRound + faults.size(); k++) {
                Fault fault = k < healthyPerRound ? null : faults.get(k - healthyPerRound);
                double age = 10 * random.nextDouble();
                VirtualCabinet unit =
                        VirtualCabinet.produced(book, mechanics, model.code(), seed + 100 * round + 10 + k % 80, age);
                Knowledge knowledge = taught;
                if (own) {
                    Taken before = sweep(unit, point);
                    knowledge = taught.sharpenedBy(baseline(point, before));
                }
                Taken now = sweep(fault == null ? unit : unit.with(fault), point);
                long start = cpuNanos();
                Explanation e =
                        new SuspectRanking(book, model, point, knowledge.at(now.ambientCelsius())).explain(now.curve());
                nanos += cpuNanos() - start;
                judged++;
                boolean fails = e.faultProbability() >= LIMITS.failProbability(own) || e.reducedChi2() > 12;
                if (fault == null) {
                    healthyN++;
                    healthyFails += fails ? 1 : 0;
                    watch += !fails && e.faultProbability() >= 0.1 ? 1 : 0;
                    chi.add(e.healthyReducedChi2());
                    suspicion.add(e.faultProbability());
                    if (fails) {
                        System.out.printf(
                                Locale.ROOT,
                                "   false fail: p %.3f chi %.2f %s%n",
                                e.faultProbability(),
                                e.healthyReducedChi2(),
                                says(e, 3));
                    }
                } else {
                    String key = fault.kind() + " " + fault.target()
                            + (fault.kind() == FaultKind.PART_DRIFT ? fault.severity() > 1 ? "+" : "-" : "")
                            + (fault.kind() == FaultKind.WRONG_IMPEDANCE ? " " + fault.severity() : "");
                    Count c = counts.computeIfAbsent(key, x -> new Count());
                    c.n++;
                    c.missed += fails ? 0 : 1;
                    int rank = rank(fault, groups, e);
                    c.first += fails && rank == 0 ? 1 : 0;
                    c.second += fails && rank >= 0 && rank <= 1 ? 1 : 0;
                    named += fails ? 1 : 0;
                    namedFirst += fails && rank == 0 ? 1 : 0;
                    namedSecond += fails && rank >= 0 && rank <= 1 ? 1 : 0;
                    c.said.merge(
                            fails ? says(e, 1) : String.format(Locale.ROOT, "-(%.2f)", e.faultProbability()),
                            1,
                            Integer::sum);
                }
            }
        }
        double[] sorted = chi.stream().mapToDouble(d -> d).sorted().toArray();
        System.out.printf(
                Locale.ROOT,
                "%s %s %s: healthy fails %d of %d, watch %d, reduced chi2 median %.2f 5%% %.2f 95%% %.2f max %.2f; %.0f ms%n",
                own ? "OWN" : "REF",
                name[0],
                name[1],
                healthyFails,
                healthyN,
                watch,
                sorted[sorted.length / 2],
                sorted[sorted.length / 20],
                sorted[sorted.length - 1 - sorted.length / 20],
                sorted[sorted.length - 1],
                nanos * 1e-6 / judged);
        double[] p = suspicion.stream().mapToDouble(d -> d).sorted().toArray();
        System.out.printf(
                Locale.ROOT,
                "   probability of a fault among healthy: median %.4f 95%% %.4f 99%% %.4f max %.4f%n",
                p[p.length / 2],
                p[p.length - 1 - p.length / 20],
                p[p.length - 1 - p.length / 100],
                p[p.length - 1]);
        counts.forEach((key, c) -> System.out.printf(
                Locale.ROOT,
                "   %-28s missed %d of %d, right first %d, among two %d   %s%n",
                key,
                c.missed,
                c.n,
                c.first,
                c.second,
                c.said));
        System.out.printf(Locale.ROOT, "   named: %d, right first %d, among two %d%n", named, namedFirst, namedSecond);
    }

    /** How many other groups of suspects come before the truth's, or -1. */
    private static int rank(Fault fault, AmbiguityGroups groups, Explanation e) {
        org.docksweep.suspect.FaultKind truth = kind(fault.kind());
        java.util.Optional<AmbiguityGroups.Group> group = groups.groups().stream()
                .filter(g -> g.members().stream()
                        .anyMatch(m -> m.kind() == truth
                                && fault.target().equals(m.elementId() != null ? m.elementId() : m.positionCode())))
                .findFirst();
        List<Object> before = new ArrayList<>();
        for (Suspect s : groups.arrange(e.suspects())) {
            Object its = groups.groupOf(s.kind(), s.positionCode(), s.elementId())
                    .map(Object.class::cast)
                    .orElse(s);
            if (group.isPresent() && group.get().equals(its)) {
                return before.size();
            }
            if (!before.contains(its)) {
                before.add(its);
            }
        }
        return -1;
    }

    private static org.docksweep.suspect.FaultKind kind(FaultKind truth) {
        return switch (truth) {
            case WRONG_IMPEDANCE -> org.docksweep.suspect.FaultKind.WRONG_IMPEDANCE_PART;
            case SEIZED -> org.docksweep.suspect.FaultKind.COIL_SEIZED;
            case PART_DRIFT -> org.docksweep.suspect.FaultKind.PART_DRIFTED;
            default -> org.docksweep.suspect.FaultKind.valueOf(truth.name());
        };
    }

    private static long cpuNanos() {
        return java.lang.management.ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    private static String says(Explanation e, int n) {
        StringBuilder text = new StringBuilder();
        for (Suspect s : e.suspects().subList(0, Math.min(n, e.suspects().size()))) {
            text.append(String.format(
                    Locale.ROOT,
                    "%s %s%s %.2f; ",
                    s.kind(),
                    s.positionCode() == null ? "" : s.positionCode(),
                    s.elementId() == null ? "" : "/" + s.elementId(),
                    s.probability()));
        }
        return text.toString().replaceAll(" [0-9.]+; $", n == 1 ? "" : "$0");
    }
}
