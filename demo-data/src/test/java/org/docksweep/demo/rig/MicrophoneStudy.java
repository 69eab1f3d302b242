package org.docksweep.demo.rig;

import java.io.PrintStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.docksweep.demo.physics.Fault;
import org.docksweep.demo.physics.FaultKind;
import org.docksweep.demo.physics.VirtualCabinet;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.Baseline;
import org.docksweep.judge.CabinetJudgement;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.RigException;

/**
 * What the microphone tells, counted on the virtual rig: {@code noise COUNT SEED} judges noisy healthy sweeps,
 * {@code rub UNITS SEED} makes the table of detection against rub level and hall noise, {@code faults UNITS SEED} judges
 * weak ways, polarity, buzz and dead ways, {@code spoiled UNITS SEED} what is wrong with the sound itself. Behind the
 * seed test points may be named, like {@code SPIN12/IN}; else all are taken.
 */
final class MicrophoneStudy {
    private static final String[] ALL_POINTS = {
        "SPIN12/IN", "DUNE15B/LF", "DUNE15B/HF", "UNDR215/IN", "PEBL8/IN", "HEAD3/IN", "SALT12A/LINE"
    };
    private static final double[] NOISE_DB = {35, 45, 55, 65};
    private static final double KNOCKS_PER_S = 0.3;

    private final PrintStream out;
    private final long seed;
    private final String[] points;
    private final Map<String, MicrophoneScene> scenes = new LinkedHashMap<>();

    MicrophoneStudy(PrintStream out, long seed, String... points) {
        this.out = out;
        this.seed = seed;
        this.points = points.length == 0 ? ALL_POINTS : points;
    }

    /** Entry point of the study. */
    public static void main(String[] args) throws RigException {
        MicrophoneStudy study =
                new MicrophoneStudy(System.out, Long.parseLong(args[2]), Arrays.copyOfRange(args, 3, args.length));
        int count = Integer.parseInt(args[1]);
        switch (args[0]) {
            case "noise" -> study.noise(count);
            case "rub" -> study.rub(count);
            case "faults" -> study.faults(count);
            case "spoiled" -> study.spoiled(count);
            default -> throw new IllegalArgumentException("expected noise, rub, faults or spoiled, got " + args[0]);
        }
    }

    private MicrophoneScene scene(String name) throws RigException {
        if (!scenes.containsKey(name)) {
            String[] parts = name.split("/");
            scenes.put(name, new MicrophoneScene(parts[0], parts[1], seed));
        }
        return scenes.get(name);
    }

    /**
     * Healthy sweeps in four noises with knocks: none may fail for the noise. A cabinet that fails in the quiet hall as well is
     * counted apart: whatever fails it, it is not noise.
     */
    Map<Verdict, Integer> noise(int count) throws RigException {
        int perUnit = 20;
        Map<Verdict, Integer> all = new TreeMap<>();
        Map<String, Map<Verdict, Integer>> byNoise = new LinkedHashMap<>();
        Map<String, Integer> again = new TreeMap<>();
        int forNoise = 0;
        int quietToo = 0;
        int done = 0;
        for (int unit = 0; done < count; unit++) {
            String name = points[unit % points.length];
            MicrophoneScene scene = scene(name);
            VirtualCabinet cabinet = scene.unit(unit);
            Baseline baseline = unit / points.length % 2 == 0 ? scene.baseline(cabinet, "unit-" + unit) : null;
            Capture quiet = scene.capture("unit-" + unit, cabinet, "20", 0);
            for (int n = 0; n < perUnit && done < count; n++, done++) {
                double noiseDb = NOISE_DB[n % NOISE_DB.length];
                Capture noisy = MicrophoneScene.noisier(quiet, noiseDb, KNOCKS_PER_S, seed * 7_919 + unit * 1_000L + n);
                CabinetJudgement judged = scene.judge(noisy, baseline);
                all.merge(judged.verdict(), 1, Integer::sum);
                byNoise.computeIfAbsent(noiseDb + " dB", k -> new TreeMap<>()).merge(judged.verdict(), 1, Integer::sum);
                if (judged.verdict() == Verdict.SWEEP_AGAIN) {
                    again.merge(judged.reason().key(), 1, Integer::sum);
                }
                if ((done + 1) % 100 == 0) {
                    out.println(done + 1 + " sweeps: " + all + " " + byNoise + " " + again);
                }
                if (judged.verdict() == Verdict.FAIL) {
                    boolean inQuiet = scene.judge(quiet, baseline).verdict() == Verdict.FAIL;
                    forNoise += inQuiet ? 0 : 1;
                    quietToo += inQuiet ? 1 : 0;
                    out.println("FAIL " + name + " unit " + unit + " noise " + noiseDb
                            + (inQuiet ? ", and in the quiet hall: " : ", not in the quiet hall: ") + judged.reason());
                }
            }
        }
        out.println("healthy sweeps by hall noise, knocks " + KNOCKS_PER_S + " per second: " + byNoise);
        out.println("all: " + all + ", swept again for " + again);
        out.println("failed for the noise: " + forNoise + "; failed, in the quiet hall as well: " + quietToo);
        return all;
    }

    /**
     * Rubs of the low-frequency driver (of the high one where it is alone), with the cabinet's own baseline. One capture of each
     * unit and level, made in a quiet hall, is judged in each noise.
     */
    void rub(int units) throws RigException {
        double[] levels = {-30, -40, -50};
        for (String name : points) {
            MicrophoneScene scene = scene(name);
            String position = lowest(scene);
            int[][] failed = new int[levels.length][NOISE_DB.length];
            int[][] again = new int[levels.length][NOISE_DB.length];
            double[] noiseDb = new double[NOISE_DB.length];
            for (int unit = 0; unit < units; unit++) {
                VirtualCabinet cabinet = scene.unit(5_000 + unit);
                Baseline baseline = scene.baseline(cabinet, "rub-" + unit);
                for (int l = 0; l < levels.length; l++) {
                    Fault fault = Fault.of(FaultKind.RUB, position, levels[l]);
                    Capture quiet = scene.capture("rub-" + unit, cabinet.with(fault), "20", 0);
                    for (int n = 0; n < NOISE_DB.length; n++) {
                        CabinetJudgement judged = inNoise(scene, quiet, n, unit, baseline);
                        Verdict verdict = judged.verdict();
                        noiseDb[n] += noiseDb(judged) / levels.length / units;
                        failed[l][n] += verdict == Verdict.FAIL ? 1 : 0;
                        again[l][n] += verdict == Verdict.SWEEP_AGAIN ? 1 : 0;
                    }
                }
                out.println(name + " " + position + " after " + (unit + 1) + " units, rub re the sweep's peak:");
                for (int l = 0; l < levels.length; l++) {
                    out.println("  " + levels[l] + " dB " + cells(failed[l], again[l], unit + 1));
                }
            }
            out.println("  noise of the silence in the residue's band re the sweep's peak, mean dB "
                    + Arrays.toString(noiseDb));
        }
    }

    private CabinetJudgement inNoise(MicrophoneScene scene, Capture quiet, int noise, int unit, Baseline baseline) {
        long noiseSeed = seed * 7_919 + unit * 1_000L + noise;
        return scene.judge(MicrophoneScene.noisier(quiet, NOISE_DB[noise], KNOCKS_PER_S, noiseSeed), baseline);
    }

    private static double noiseDb(CabinetJudgement judged) {
        return judged.points().get(0).acoustic().print().bands().get(0).noiseDb();
    }

    private static String cells(int[] failed, int[] again, int units) {
        StringBuilder line = new StringBuilder();
        for (int n = 0; n < NOISE_DB.length; n++) {
            line.append(String.format(Locale.ROOT, "| %.0f dB: FAIL %d of %d", NOISE_DB[n], failed[n], units));
            line.append(again[n] > 0 ? ", again " + again[n] + " " : " ");
        }
        return line.toString();
    }

    private static String lowest(MicrophoneScene scene) {
        List<String> codes = scene.point().positionCodes();
        return codes.stream().filter(c -> c.startsWith("LF")).findFirst().orElse(codes.get(0));
    }

    /** Weak ways, polarity, buzz, dead ways in four noises, with the cabinet's own baseline and with the reference alone. */
    void faults(int units) throws RigException {
        for (String name : points) {
            MicrophoneScene scene = scene(name);
            for (Fault fault : faultsOf(scene, name)) {
                for (boolean own : new boolean[] {true, false}) {
                    int[] failed = new int[NOISE_DB.length];
                    int[] again = new int[NOISE_DB.length];
                    int first = 0;
                    List<String> said = new ArrayList<>();
                    for (int unit = 0; unit < units; unit++) {
                        VirtualCabinet cabinet = scene.unit(7_000 + unit);
                        Baseline baseline = own ? scene.baseline(cabinet, "soft-" + unit) : null;
                        Capture quiet = scene.capture("soft-" + unit, scene.with(cabinet, fault), "20", 0);
                        for (int n = 0; n < NOISE_DB.length; n++) {
                            CabinetJudgement judged = inNoise(scene, quiet, n, unit, baseline);
                            failed[n] += judged.verdict() == Verdict.FAIL ? 1 : 0;
                            again[n] += judged.verdict() == Verdict.SWEEP_AGAIN ? 1 : 0;
                            boolean right = !judged.suspects().isEmpty() && fault != null && right(fault, judged);
                            first += right ? 1 : 0;
                            if (fault == null ? judged.verdict() != Verdict.PASS : !right) {
                                said.add(judged.reason().key() + judged.reason().arguments());
                            }
                        }
                    }
                    out.printf(
                            Locale.ROOT,
                            "%-12s %-30s %-9s %s first %d of %d %s%n",
                            name,
                            fault == null ? "healthy" : fault.kind() + " " + fault.target() + " " + fault.severity(),
                            own ? "baseline" : "reference",
                            cells(failed, again, units),
                            first,
                            units * NOISE_DB.length,
                            said);
                }
            }
        }
    }

    private static boolean right(Fault fault, CabinetJudgement judged) {
        String kind = judged.suspects().get(0).kind().name();
        return switch (fault.kind()) {
            case WAY_WEAK, WAY_DEAD ->
                kind.equals("WAY_WEAK")
                        && fault.target()
                                .startsWith(
                                        judged.suspects().get(0).positionCode().substring(0, 2));
            case POLARITY_REVERSED -> kind.equals("WAY_REVERSED") || kind.equals("POLARITY_REVERSED");
            default -> kind.equals("LOOSE_PART") || kind.equals("COIL_RUBS");
        };
    }

    private static List<Fault> faultsOf(MicrophoneScene scene, String name) {
        List<Fault> faults = new ArrayList<>();
        faults.add(null);
        for (String position : scene.point().positionCodes()) {
            for (double loss : new double[] {3, 6, 10}) {
                if (!position.startsWith("LF2") && !position.startsWith("LF1")) {
                    faults.add(Fault.of(FaultKind.WAY_WEAK, position, loss));
                }
            }
            if (!name.startsWith("UNDR")) {
                faults.add(Fault.of(FaultKind.POLARITY_REVERSED, position));
            }
            if (name.startsWith("SALT")) {
                faults.add(Fault.of(FaultKind.WAY_DEAD, position));
            }
        }
        if (scene.point().positionCodes().stream().anyMatch(p -> p.startsWith("LF"))) {
            faults.add(Fault.of(FaultKind.BUZZ, "box", -40));
        }
        return faults;
    }

    /** What the gate says when the sound itself is spoiled. */
    void spoiled(int units) throws RigException {
        Disturbance[] kinds = {
            Disturbance.MIC_UNPLUGGED,
            Disturbance.MIC_OVERLOADED,
            Disturbance.MIC_WRONG_CHANNEL,
            Disturbance.FORKLIFT,
            Disturbance.WIND,
            Disturbance.NEIGHBOUR,
            Disturbance.FACING_AWAY,
            Disturbance.REVERBERANT,
            Disturbance.KNOCK
        };
        for (Disturbance kind : kinds) {
            Map<String, Integer> said = new TreeMap<>();
            for (String name : points) {
                MicrophoneScene scene = scene(name);
                for (int unit = 0; unit < units; unit++) {
                    VirtualCabinet cabinet = scene.unit(9_000 + unit);
                    Baseline baseline = scene.baseline(cabinet, "spoiled-" + unit);
                    CabinetJudgement judged =
                            scene.judge(scene.capture("spoiled-" + unit, cabinet, "45", 0, kind), baseline);
                    said.merge(judged.verdict() + " " + judged.reason().key(), 1, Integer::sum);
                }
            }
            out.println(kind + ": " + said);
        }
    }
}
