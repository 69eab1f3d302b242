package org.docksweep.sweep;

import java.util.*;
import java.util.function.DoubleFunction;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;

class ExploreTest {
    @Test
    void explore() {
        Map<String, DoubleFunction<Complex>> loads = new LinkedHashMap<>();
        loads.put("r10", f -> Complex.valueOf(10));
        loads.put("free", Loads::freeDriver);
        loads.put("vented", Loads::ventedDriver);
        loads.put("lossy", Loads::lossyDriver);
        loads.put("hornOpen", Loads::hornOpen);
        loads.put("open", f -> Complex.valueOf(1e5));
        loads.put("short", f -> Complex.valueOf(0.06));
        for (double noise : new double[] {2e-9, 2e-6, 5e-5})
        for (var e : loads.entrySet()) {
            Capture c = new CaptureMaker().load(e.getValue()).noise(noise).make();
            long t0 = System.nanoTime();
            SweepAnalysis a = new SweepAnalyser().analyse(c);
            long t1 = System.nanoTime();
            System.out.printf("%s noise %g: load %s issues %s drop %s V %.3f I %.3f %.1f ms%n", e.getKey(), noise, a.load(), a.issues(), a.currentDropouts(), a.meanVoltageVrms(), a.meanCurrentArms(), (t1 - t0) / 1e6);
            ImpedanceCurve z = a.impedance();
            if (z == null) continue;
            double[] f = z.frequencyHz();
            List<Double> errs = new ArrayList<>();
            double worst = 0; double wf = 0; int cover = 0;
            StringBuilder sb = new StringBuilder();
            for (int p = 0; p < f.length; p++) {
                Complex t = e.getValue().apply(f[p]);
                double err = Math.hypot(t.getReal() - z.resistanceOhm()[p], t.getImaginary() - z.reactanceOhm()[p]) / t.norm();
                errs.add(err);
                if (err > worst) { worst = err; wf = f[p]; }
                if (Math.abs(z.magnitudeOhm(p) - t.norm()) < 1.96 * z.standardUncertaintyOhm()[p]) cover++;
                if (err > 1e-3) sb.append(String.format(" %.0f:%.2g", f[p], err * 100));
            }
            Collections.sort(errs);
            System.out.printf("   median err %.2g worst %.2g at %.1f cover %.3f  u/Z mid %.2g | %s%n", errs.get(errs.size() / 2), worst, wf, cover / (double) f.length, z.standardUncertaintyOhm()[100] / z.magnitudeOhm(100), sb);
        }
    }
}
