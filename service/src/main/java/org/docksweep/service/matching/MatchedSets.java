package org.docksweep.service.matching;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.MatchedSet;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.gate.Baseline;
import org.docksweep.gate.ClosestSet;
import org.docksweep.gate.Likeness;
import org.docksweep.gate.PointReference;
import org.docksweep.service.cabinets.Fleet;
import org.docksweep.service.commissionings.Commissionings;
import org.docksweep.service.models.Models;
import org.docksweep.service.web.Refusal;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Picks cabinets of a model on the shelf whose own good curves and levels agree best. */
@Service
@Transactional(readOnly = true)
class MatchedSets {
    private static final int MOST = 24;

    private final Fleet fleet;
    private final Commissionings commissionings;
    private final Models models;

    MatchedSets(Fleet fleet, Commissionings commissionings, Models models) {
        this.fleet = fleet;
        this.commissionings = commissionings;
        this.models = models;
    }

    /** A cabinet with its own good curves. */
    private record Candidate(CabinetBody cabinet, List<Baseline> curves) {
        AssetTag tag() {
            return cabinet.tag();
        }
    }

    MatchedSet choose(String modelCode, int count) {
        models.cabinetModel(modelCode, "model");
        if (count < 2 || count > MOST) {
            throw Refusal.badField(
                    "count",
                    "must be from 2 to " + MOST + ", but is " + count,
                    "Ask for a stereo pair with 2, for an array with as many as it has.");
        }
        List<PointReference> references = models.references().stream()
                .filter(r -> r.cabinetModelCode().equals(modelCode))
                .toList();
        if (references.isEmpty()) {
            throw Refusal.wrongState(
                    "model",
                    "model " + modelCode + " has no reference, so nobody knows what its units usually differ by",
                    "Teach its reference from known-good units first.");
        }
        List<CabinetBody> ready = fleet.all().stream()
                .filter(c -> c.modelCode().equals(modelCode) && c.status() == CabinetStatus.READY)
                .sorted(Comparator.comparing(CabinetBody::tag))
                .toList();
        Map<AssetTag, List<Baseline>> curves =
                commissionings.newest().stream().collect(Collectors.groupingBy(Baseline::tag));
        List<Candidate> candidates = ready.stream()
                .filter(c -> curves.containsKey(c.tag()))
                .map(c -> new Candidate(c, curves.get(c.tag())))
                .toList();
        Likeness.Difference[][] differences = differences(candidates, references);
        ClosestSet.Choice choice = candidates.size() < count ? null : ClosestSet.of(distances(differences), count);
        if (choice == null || Double.isInfinite(choice.widest())) {
            throw Refusal.wrongState(
                    "count",
                    "of model " + modelCode + ", " + ready.size() + " cabinets are on the shelf and "
                            + candidates.size() + " of them have own good curves; " + count
                            + " that can be compared are not among them",
                    "Ask for fewer, or commission more cabinets of the model.");
        }
        return set(modelCode, candidates, differences, choice, ready);
    }

    private static Likeness.Difference[][] differences(List<Candidate> candidates, List<PointReference> references) {
        int n = candidates.size();
        Likeness.Difference[][] differences = new Likeness.Difference[n][n];
        for (int i = 0; i < n; i++) {
            for (int k = i + 1; k < n; k++) {
                differences[i][k] = Likeness.between(
                                candidates.get(i).curves(), candidates.get(k).curves(), references)
                        .orElse(null);
            }
        }
        return differences;
    }

    private static double[][] distances(Likeness.Difference[][] differences) {
        int n = differences.length;
        double[][] distances = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int k = i + 1; k < n; k++) {
                Likeness.Difference difference = differences[i][k];
                distances[i][k] = difference == null ? Double.POSITIVE_INFINITY : difference.mismatch();
                distances[k][i] = distances[i][k];
            }
        }
        return distances;
    }

    private static MatchedSet set(
            String modelCode,
            List<Candidate> candidates,
            Likeness.Difference[][] differences,
            ClosestSet.Choice choice,
            List<CabinetBody> ready) {
        List<MatchedSet.Pair> pairs = new ArrayList<>();
        for (int i : choice.members()) {
            for (int k : choice.members()) {
                if (i < k) {
                    Likeness.Difference d = differences[i][k];
                    pairs.add(new MatchedSet.Pair(
                            candidates.get(i).tag(),
                            candidates.get(k).tag(),
                            d.mismatch(),
                            d.levelDb(),
                            d.worstDb(),
                            d.worstHz()));
                }
            }
        }
        List<AssetTag> compared = candidates.stream().map(Candidate::tag).toList();
        return new MatchedSet(
                modelCode,
                candidates.size(),
                choice.members().stream().map(i -> member(candidates.get(i))).toList(),
                pairs,
                choice.widest(),
                choice.exact(),
                ready.stream()
                        .map(CabinetBody::tag)
                        .filter(t -> !compared.contains(t))
                        .toList());
    }

    private static MatchedSet.Member member(Candidate candidate) {
        Baseline oldest = candidate.curves().stream()
                .min(Comparator.comparing(Baseline::takenAt))
                .orElseThrow();
        return new MatchedSet.Member(
                candidate.tag(), candidate.cabinet().shelfPlace(), oldest.takenAt(), oldest.ambientCelsius());
    }
}
