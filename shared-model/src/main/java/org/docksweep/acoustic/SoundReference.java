package org.docksweep.acoustic;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import org.docksweep.sweep.AcousticCurve;
import org.docksweep.sweep.SoundPrint;

/**
 * What known-good units of a model sound like beyond their level. Medians keep one bad unit among the good from spoiling
 * it; the phase is that of the unit most like the others, since phases of cabinets that stand some millimetres apart
 * cannot be averaged at high frequencies.
 */
public final class SoundReference {
    private SoundReference() {}

    /**
     * The typical print.
     *
     * @param curves curves of known-good units on one grid; those without a print are left out
     * @return the print, or null when no unit has one
     */
    public static SoundPrint typical(List<AcousticCurve> curves) {
        List<AcousticCurve> heard = curves.stream()
                .filter(c -> c.print() != null
                        && Arrays.equals(c.frequencyHz(), curves.get(0).frequencyHz()))
                .toList();
        if (heard.isEmpty()) {
            return null;
        }
        List<SoundPrint> prints = heard.stream().map(AcousticCurve::print).toList();
        SoundPrint likest = mostAlike(heard).print();
        List<SoundPrint.Band> bands = new ArrayList<>();
        for (SoundPrint.Band band : likest.bands()) {
            List<SoundPrint.Band> all = prints.stream()
                    .map(p -> p.bandAt(band.centreHz()))
                    .filter(java.util.Objects::nonNull)
                    .toList();
            double[] harmonics = new double[band.harmonicDb().length];
            for (int n = 0; n < harmonics.length; n++) {
                int order = n;
                harmonics[n] = median(
                        all.stream().filter(b -> b.harmonicDb().length > order).toList(), b -> b.harmonicDb()[order]);
            }
            bands.add(new SoundPrint.Band(
                    band.centreHz(),
                    harmonics,
                    median(all, SoundPrint.Band::residueDb),
                    median(all, SoundPrint.Band::burstDb),
                    median(all, SoundPrint.Band::crestDb),
                    median(all, SoundPrint.Band::noiseDb)));
        }
        return new SoundPrint(
                likest.arrivalS(),
                likest.phaseRad(),
                median(prints, SoundPrint::sweepPeakPa),
                median(prints, SoundPrint::directDb),
                bands,
                commonEvent(prints),
                Set.of());
    }

    /** An event belongs to the model only when most units have it; the median one then. */
    private static SoundPrint.Event commonEvent(List<SoundPrint> prints) {
        List<SoundPrint.Event> events = prints.stream()
                .map(SoundPrint::event)
                .filter(java.util.Objects::nonNull)
                .sorted(java.util.Comparator.comparingDouble(SoundPrint.Event::burstDb))
                .toList();
        return 2 * events.size() > prints.size() ? events.get(events.size() / 2) : null;
    }

    private static AcousticCurve mostAlike(List<AcousticCurve> curves) {
        AcousticCurve best = curves.get(0);
        double most = Double.NEGATIVE_INFINITY;
        double[] hz = best.frequencyHz();
        for (AcousticCurve one : curves) {
            double[] likeness = curves.stream()
                    .mapToDouble(other -> {
                        Polarity polarity = Polarity.of(one, other, hz[0], hz[hz.length - 1]);
                        return polarity == null ? 0 : polarity.same();
                    })
                    .sorted()
                    .toArray();
            double middle = likeness[likeness.length / 2];
            if (middle > most) {
                most = middle;
                best = one;
            }
        }
        return best;
    }

    private static <T> double median(List<T> items, ToDoubleFunction<T> value) {
        double[] sorted = items.stream().mapToDouble(value).sorted().toArray();
        int middle = sorted.length / 2;
        return sorted.length == 0
                ? 0
                : sorted.length % 2 == 1 ? sorted[middle] : 0.5 * (sorted[middle - 1] + sorted[middle]);
    }
}
