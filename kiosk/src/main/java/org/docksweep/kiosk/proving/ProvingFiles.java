package org.docksweep.kiosk.proving;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.docksweep.contract.ProvingFaultKind;

/** The report as files for programs. */
public final class ProvingFiles {
    private ProvingFiles() {}

    /**
     * The counts, for a JSON file.
     *
     * @param options what the run was made of
     * @param faults counts of faults, by row of the table
     * @param healthy counts of healthy cabinets
     * @param models counts by model
     * @param prompts by kind: returns, right prompts, passes, fails
     * @param failedByNoiseAlone healthy cabinets that fail in noise only
     * @param groupSizes number of ambiguity groups by size
     * @param severitySweep detection against severity, or null
     * @param wallS duration in seconds
     * @param processorS processor time in seconds
     */
    public record Counts(
            ProvingOptions options,
            Map<String, Tally> faults,
            Map<String, Tally> healthy,
            Map<String, Tally> models,
            Map<ProvingFaultKind, int[]> prompts,
            int failedByNoiseAlone,
            Map<Integer, Integer> groupSizes,
            SeveritySweep severitySweep,
            double wallS,
            double processorS) {}

    /**
     * Everything counted.
     *
     * @param report the report
     * @param sweep detection against severity, or null
     * @return counts
     */
    public static Counts counts(ProvingReport report, SeveritySweep sweep) {
        Map<Integer, Integer> sizes = new java.util.TreeMap<>();
        report.groups()
                .all()
                .values()
                .forEach(ofModel -> ofModel.forEach(g -> sizes.merge(g.members().size(), 1, Integer::sum)));
        return new Counts(
                report.options(),
                report.faults(),
                report.healthy(),
                report.models(),
                report.prompts(),
                report.failedByNoiseAlone(),
                sizes,
                sweep,
                report.wallS(),
                report.processorS());
    }

    /**
     * Every return, one line each, with a header.
     *
     * @param report the report
     * @return CSV text
     */
    public static String csv(ProvingReport report) {
        StringBuilder csv =
                new StringBuilder("return,label,model,fault,target,severity,knows,teaching,ambient_c,coil_c,hall_db,"
                        + "verdict,prompt,first_prompt,watch,sweeps,first_suspect,place_right,first_exact,second_exact,first_in_group,"
                        + "second_in_group,meter,mask,processor_s\n");
        for (Outcome o : report.outcomes()) {
            ReturnCase c = o.dealt();
            csv.append(String.join(
                    ",",
                    List.of(
                            Integer.toString(c.index()),
                            c.labelModel(),
                            c.unit().modelCode(),
                            c.healthy() ? "HEALTHY" : c.fault().kind().name(),
                            c.healthy() ? "" : c.fault().target(),
                            number(c.unit().severity()),
                            c.knowing().name(),
                            Integer.toString(c.teaching()),
                            number(c.unit().climate().ambientCelsius()),
                            number(c.unit().climate().coilCelsius()),
                            number(c.unit().climate().hallNoiseDb()),
                            o.verdict().name(),
                            o.prompt().name(),
                            o.firstPrompt().name(),
                            Boolean.toString(o.watch()),
                            Integer.toString(o.sweeps()),
                            o.firstSuspect(),
                            Boolean.toString(o.position()),
                            Boolean.toString(o.naming().firstExact()),
                            Boolean.toString(o.naming().firstTwoExact()),
                            Boolean.toString(o.naming().firstInGroup()),
                            Boolean.toString(o.naming().firstTwoInGroup()),
                            Boolean.toString(o.plain().meter()),
                            Boolean.toString(o.plain().mask()),
                            number(o.seconds()))));
            csv.append('\n');
        }
        return csv.toString();
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.3f", value);
    }
}
