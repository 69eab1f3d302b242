package org.docksweep.kiosk.proving;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.docksweep.contract.ProvingFault;
import org.docksweep.contract.ProvingFaultKind;
import org.docksweep.contract.ProvingGround;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.Feed;
import org.docksweep.fleet.Way;
import org.docksweep.suspect.Suspect;

/**
 * Faults of a model that the terminals cannot tell apart, fixed before the first return: those whose changes of the
 * impedance, weighed by what healthy units and the moment do to it, are alike by more than 0.95 in direction and size; the
 * severity of a soft suspect is free, as it is for the gate. This asks for more than a correlation above 0.95. Groups are
 * made by complete linkage: every pair of a group is above the limit. Faults of two ways are never put together, and faults
 * that only a microphone hears stand alone, but for those of equal drivers in one box, which sound the same.
 */
final class AmbiguityGroups {
    static final double LIMIT = 0.95;

    private final Map<String, List<Group>> byModel = new HashMap<>();
    private final Map<String, List<ProvingFault>> faults = new HashMap<>();

    /**
     * Faults that cannot be told apart.
     *
     * @param members the faults
     * @param ways ways they concern
     */
    record Group(List<ProvingFault> members, Set<Way> ways) {}

    /** Computes the groups of all models of a run. */
    static AmbiguityGroups of(ProvingGround ground, ProvingOptions options) {
        AmbiguityGroups groups = new AmbiguityGroups();
        for (CabinetModel model : ground.book(options.models(), options.seed()).cabinetModels()) {
            List<ProvingFault> all = ground.faults(model.code()).stream()
                    .filter(f -> f.kind().group() != ProvingFaultKind.Group.NOT_A_FAULT)
                    .toList();
            groups.faults.put(model.code(), all);
            groups.byModel.put(
                    model.code(),
                    model.feed() == Feed.POWERED ? perDriver(model, all) : linked(model, all, ground, options));
        }
        return groups;
    }

    /** A powered cabinet shows of each driver only whether it is silent or weak (one finding), reversed, or rubbing. */
    private static List<Group> perDriver(CabinetModel model, List<ProvingFault> all) {
        Map<String, List<ProvingFault>> bySound = new TreeMap<>();
        for (ProvingFault fault : all) {
            String sound = switch (fault.kind()) {
                case DRIVER_OPEN, COIL_SHORTED, SEIZED, WRONG_IMPEDANCE, WAY_WEAK -> "silent or weak";
                default -> fault.kind().name();
            };
            bySound.computeIfAbsent(fault.target() + " " + sound, k -> new ArrayList<>())
                    .add(fault);
        }
        return bySound.values().stream().map(members -> group(model, members)).toList();
    }

    private static List<Group> linked(
            CabinetModel model, List<ProvingFault> all, ProvingGround ground, ProvingOptions options) {
        Sensitivities sensitivities = new Sensitivities(ground, options, model);
        double[][] likeness = sensitivities.likeness(all);
        for (int i = 0; i < all.size(); i++) {
            for (int k = 0; k < all.size(); k++) {
                if (twins(model, all.get(i), all.get(k))) {
                    likeness[i][k] = 1;
                }
                if (group(model, List.of(all.get(i), all.get(k))).ways().size() > 1) {
                    likeness[i][k] = 0;
                }
            }
        }
        List<Set<Integer>> clusters = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            clusters.add(new HashSet<>(Set.of(i)));
        }
        while (true) {
            double best = LIMIT;
            int[] pair = null;
            for (int a = 0; a < clusters.size(); a++) {
                for (int b = a + 1; b < clusters.size(); b++) {
                    double weakest = weakest(likeness, clusters.get(a), clusters.get(b));
                    if (weakest > best) {
                        best = weakest;
                        pair = new int[] {a, b};
                    }
                }
            }
            if (pair == null) {
                break;
            }
            clusters.get(pair[0]).addAll(clusters.remove(pair[1]));
        }
        return clusters.stream()
                .map(c -> group(model, c.stream().sorted().map(all::get).toList()))
                .toList();
    }

    /**
     * The same fault of either of two equal drivers in one box: the model is symmetric in them. The one unit at which sensitivities are
     * computed is not, by its production spread, which nobody at a dock knows.
     */
    private static boolean twins(CabinetModel model, ProvingFault one, ProvingFault other) {
        boolean both = model.positions().stream().anyMatch(p -> p.code().equals(one.target()))
                && model.positions().stream().anyMatch(p -> p.code().equals(other.target()));
        return both
                && one.kind() == other.kind()
                && model.enclosureOf(one.target()).positionCodes().contains(other.target())
                && model.position(one.target())
                        .driverModelCode()
                        .equals(model.position(other.target()).driverModelCode());
    }

    private static double weakest(double[][] likeness, Set<Integer> a, Set<Integer> b) {
        double weakest = 1;
        for (int i : a) {
            for (int k : b) {
                weakest = Math.min(weakest, likeness[i][k]);
            }
        }
        return weakest;
    }

    private static Group group(CabinetModel model, List<ProvingFault> members) {
        Set<Way> ways = new TreeSet<>();
        for (ProvingFault member : members) {
            // the terminals and parts that feed several ways belong to none
            Set<Way> own = new HashSet<>();
            member.positionCodes().forEach(p -> own.add(model.position(p).way()));
            if (own.size() == 1) {
                ways.addAll(own);
            }
        }
        return new Group(List.copyOf(members), ways);
    }

    /** Whether a suspect means a fault of the same group as the true one. */
    boolean together(String modelCode, Suspect suspect, ProvingFault truth) {
        List<ProvingFault> known = faults.getOrDefault(modelCode, List.of());
        // several true kinds share one suspect kind (a driver open alone or beside another); any of them counts
        return known.stream()
                .filter(f -> FaultNames.says(suspect, f))
                .anyMatch(f -> byModel.get(modelCode).stream()
                        .anyMatch(g -> g.members().contains(f) && g.members().contains(truth)));
    }

    /** All groups, by model. */
    Map<String, List<Group>> all() {
        return Map.copyOf(byModel);
    }
}
