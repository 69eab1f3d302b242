package org.docksweep.kiosk.proving;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.docksweep.contract.ProvingFault;
import org.docksweep.contract.ProvingFaultKind;
import org.docksweep.contract.ProvingGround;
import org.docksweep.contract.ProvingUnit;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;

/**
 * Deals the returns of a run. Kinds take turns, so that none is rare; models, targets, units, temperatures and noise are
 * drawn. Of 100 returns 32 are hard faults, 39 soft, 24 healthy and 5 no fault of the cabinet.
 */
final class CaseDealer {
    private static final double HARD_UP_TO = 0.32;
    private static final double SOFT_WITH_BASELINE_UP_TO = 0.545;
    private static final double SOFT_WITH_REFERENCE_UP_TO = 0.71;
    private static final double HEALTHY_UP_TO = 0.95;
    /** Fraction of the golden ratio: its multiples fill the unit interval evenly. */
    private static final double EVENLY = 0.6180339887498949;

    private static final double RUB_HALL_NOISE_DB = 45;
    static final double MOST_AGE_YEARS = 8;
    private static final double BASELINE_NOISE_DB = 45;

    private final ProvingOptions options;
    private final ModelBook book;
    private final Map<ProvingFaultKind, List<Candidate>> candidates = new EnumMap<>(ProvingFaultKind.class);
    private final Map<ProvingFaultKind.Group, Integer> turns = new EnumMap<>(ProvingFaultKind.Group.class);
    private final Map<Knowing, Integer> softTurns = new EnumMap<>(Knowing.class);
    private final SplittableRandom random;

    /** A fault with the model on the label. */
    private record Candidate(String labelModel, ProvingFault fault) {}

    CaseDealer(ProvingGround ground, ProvingOptions options) {
        this.options = options;
        this.book = ground.book(options.models(), options.seed());
        this.random = new SplittableRandom(options.seed());
        for (CabinetModel model : book.cabinetModels()) {
            for (ProvingFault fault : ground.faults(model.code())) {
                add(model.code(), fault);
            }
            for (CabinetModel other : book.cabinetModels()) {
                if (!other.equals(model) && sameLead(model, other)) {
                    add(model.code(), new ProvingFault(ProvingFaultKind.WRONG_LABEL, other.code(), List.of()));
                }
            }
        }
    }

    private void add(String labelModel, ProvingFault fault) {
        candidates.computeIfAbsent(fault.kind(), k -> new ArrayList<>()).add(new Candidate(labelModel, fault));
    }

    private static boolean sameLead(CabinetModel a, CabinetModel b) {
        return a.testPoints().get(0).kind() == b.testPoints().get(0).kind();
    }

    /** All returns of the run, always the same for equal options. */
    List<ReturnCase> deal() {
        List<ReturnCase> cases = new ArrayList<>();
        for (int i = 0; i < options.returns(); i++) {
            cases.add(one(i));
        }
        return cases;
    }

    /** So many returns with one soft fault at one severity. */
    List<ReturnCase> dealSoft(ProvingFaultKind kind, Knowing knowing, double severity, int count, int firstIndex) {
        List<ReturnCase> cases = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Candidate candidate = pick(candidates.get(kind));
            cases.add(faulty(firstIndex + i, candidate, knowing, signed(kind, severity)));
        }
        return cases;
    }

    boolean has(ProvingFaultKind kind) {
        return candidates.containsKey(kind);
    }

    private ReturnCase one(int index) {
        if (!options.kinds().isEmpty()) {
            return ofKinds(index);
        }
        double share = (index + 0.5) * EVENLY % 1;
        if (random.nextDouble() < options.unknownShare()) {
            String model = anyModel();
            return faulty(
                    index,
                    new Candidate(model, new ProvingFault(ProvingFaultKind.UNTAUGHT_MODEL, model, List.of())),
                    Knowing.REFERENCE,
                    0);
        }
        if (share < HARD_UP_TO) {
            ProvingFaultKind kind = next(ProvingFaultKind.Group.HARD);
            return faulty(index, pick(candidates.get(kind)), knowing(index), hardSeverity(kind));
        }
        if (share < SOFT_WITH_REFERENCE_UP_TO) {
            Knowing knowing = share < SOFT_WITH_BASELINE_UP_TO ? Knowing.BASELINE : Knowing.REFERENCE;
            return soft(index, options.knowing().contains(knowing) ? knowing : knowing(index));
        }
        if (share < HEALTHY_UP_TO) {
            return healthy(index);
        }
        ProvingFaultKind kind = next(ProvingFaultKind.Group.NOT_A_FAULT);
        return faulty(index, pick(candidates.get(kind)), knowing(index), 0);
    }

    /** Only the kinds asked for and healthy cabinets, in turns, each with baseline and with reference in turns. */
    private ReturnCase ofKinds(int index) {
        List<ProvingFaultKind> kinds =
                candidates.keySet().stream().filter(options.kinds()::contains).toList();
        if (kinds.isEmpty()) {
            throw new IllegalArgumentException("none of the models can have any of " + options.kinds()
                    + "; name kinds that occur, or other models");
        }
        int turn = index % (kinds.size() + 1);
        boolean own = index / (kinds.size() + 1) % 2 == 0 && options.knowing().contains(Knowing.BASELINE);
        Knowing knowing = own || !options.knowing().contains(Knowing.REFERENCE) ? Knowing.BASELINE : Knowing.REFERENCE;
        if (turn == kinds.size()) {
            String model = anyModel();
            return dealt(index, model, model, null, knowing, 0);
        }
        ProvingFaultKind kind = kinds.get(turn);
        double severity = switch (kind.group()) {
            case HARD -> hardSeverity(kind);
            case SOFT -> signed(kind, options.severities().of(kind, knowing));
            case NOT_A_FAULT -> 0;
        };
        return faulty(index, pick(candidates.get(kind)), knowing, severity);
    }

    private Knowing knowing(int index) {
        if (options.knowing().size() == 1) {
            return options.knowing().iterator().next();
        }
        return random.nextBoolean() ? Knowing.BASELINE : Knowing.REFERENCE;
    }

    /** Kinds of a group take turns; kinds no model of the run can have are left out. */
    private ProvingFaultKind next(ProvingFaultKind.Group group) {
        List<ProvingFaultKind> kinds = kinds(group);
        int turn = turns.merge(group, 1, Integer::sum);
        return kinds.get(turn % kinds.size());
    }

    private List<ProvingFaultKind> kinds(ProvingFaultKind.Group group) {
        return candidates.keySet().stream().filter(k -> k.group() == group).toList();
    }

    private ReturnCase soft(int index, Knowing knowing) {
        List<ProvingFaultKind> kinds = kinds(ProvingFaultKind.Group.SOFT);
        ProvingFaultKind kind = kinds.get(softTurns.merge(knowing, 1, Integer::sum) % kinds.size());
        double severity = signed(kind, options.severities().of(kind, knowing));
        return faulty(index, pick(candidates.get(kind)), knowing, severity);
    }

    private double signed(ProvingFaultKind kind, double severity) {
        return kind == ProvingFaultKind.PART_OFF_VALUE && random.nextBoolean() ? -severity : severity;
    }

    private double hardSeverity(ProvingFaultKind kind) {
        return switch (kind) {
            case TERMINALS_SHORTED -> 0.01 + 0.1 * random.nextDouble();
            case COIL_SHORTED -> 0.05 + 0.2 * random.nextDouble();
            case WRONG_IMPEDANCE -> random.nextBoolean() ? 2 : 0.5;
            default -> 0;
        };
    }

    private ReturnCase healthy(int index) {
        String model = anyModel();
        return dealt(index, model, model, null, knowing(index), 0);
    }

    private String anyModel() {
        return pick(book.cabinetModels()).code();
    }

    private ReturnCase faulty(int index, Candidate candidate, Knowing knowing, double severity) {
        boolean stranger = candidate.fault().kind() == ProvingFaultKind.WRONG_LABEL;
        String trueModel = stranger ? candidate.fault().target() : candidate.labelModel();
        return dealt(index, candidate.labelModel(), trueModel, candidate.fault(), knowing, severity);
    }

    private ReturnCase dealt(
            int index, String labelModel, String trueModel, ProvingFault fault, Knowing knowing, double severity) {
        long unitSeed = options.seed() * 1_000_003L + 1_000 + index;
        double ageThen = MOST_AGE_YEARS * random.nextDouble();
        double age = ageThen + random.nextDouble();
        double noiseDb = fault != null && fault.kind() == ProvingFaultKind.RUB
                ? RUB_HALL_NOISE_DB
                : between(options.hallNoiseDb(), random);
        boolean acts = fault != null
                && fault.kind() != ProvingFaultKind.WRONG_LABEL
                && fault.kind() != ProvingFaultKind.UNTAUGHT_MODEL;
        ProvingUnit unit = new ProvingUnit(
                trueModel, unitSeed, age, acts ? fault : null, severity, climate(options, random, noiseDb));
        ProvingUnit before = new ProvingUnit(labelModel, unitSeed, ageThen, null, 0, calmClimate(random));
        boolean recorded = random.nextDouble() < options.recordedShare();
        // of its own stream: a run with more teachings deals the same returns
        int teaching = new SplittableRandom(unitSeed).nextInt(options.teachings());
        return new ReturnCase(index, labelModel, unit, before, fault, knowing, teaching, recorded);
    }

    /** Some degrees from the hall's air: the truck was elsewhere, and one cabinet in four played an hour ago. */
    static ProvingUnit.Climate climate(ProvingOptions options, SplittableRandom random, double noiseDb) {
        double ambient = between(options.celsius(), random);
        double inside = ambient + 5 * random.nextDouble() - 2.5;
        double coil = inside + (random.nextInt(4) == 0 ? 6 * random.nextDouble() : 0);
        return new ProvingUnit.Climate(coil, inside, ambient, noiseDb);
    }

    /** Of a day on which baselines are taken. */
    static ProvingUnit.Climate calmClimate(SplittableRandom random) {
        double calmCelsius = 17 + 6 * random.nextDouble();
        return new ProvingUnit.Climate(calmCelsius, calmCelsius, calmCelsius, BASELINE_NOISE_DB);
    }

    private static double between(ProvingOptions.Range range, SplittableRandom random) {
        return range.low() + (range.high() - range.low()) * random.nextDouble();
    }

    private <T> T pick(List<T> list) {
        return list.get(random.nextInt(list.size()));
    }
}
