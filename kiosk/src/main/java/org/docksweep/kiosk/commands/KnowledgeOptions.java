package org.docksweep.kiosk.commands;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.fleet.ModelBook;
import org.docksweep.gate.Baseline;
import org.docksweep.gate.LimitSet;
import org.docksweep.gate.PointReference;
import org.docksweep.gate.SharedScatter;
import org.docksweep.suspect.Priors;
import picocli.CommandLine.Option;

/** Options for what the gate knows: models, references, baselines, limits. */
final class KnowledgeOptions {
    static final String FLEET = "fleet.json";

    @Option(
            names = "--fleet",
            paramLabel = "FILE",
            description = "Models, references, baselines and limits in one file, as the kiosk keeps them. Default: "
                    + FLEET + " in FOLDER, not needed when --models is given.")
    private Path fleetFile;

    @Option(names = "--models", paramLabel = "FILE", description = "Models instead of the fleet's.")
    private Path modelsFile;

    @Option(
            names = "--references",
            paramLabel = "FILE",
            description = "References, as the teach command writes them; replace the fleet's of the same model and test"
                    + " point. May be repeated.")
    private List<Path> referenceFiles = List.of();

    @Option(
            names = "--baselines",
            paramLabel = "FILE",
            description = "Baselines; replace the fleet's of the same cabinet and test point. May be repeated.")
    private List<Path> baselineFiles = List.of();

    @Option(names = "--limits", paramLabel = "FILE", description = "Limits instead of the fleet's.")
    private Path limitsFile;

    /**
     * What the gate knows.
     *
     * @param book models
     * @param references references
     * @param baselines baselines
     * @param limits limits
     * @param priors what the house had learned
     */
    record Knowledge(
            ModelBook book, List<PointReference> references, List<Baseline> baselines, LimitSet limits, Priors priors) {
        List<Baseline> baselinesOf(String cabinet) {
            return baselines.stream()
                    .filter(b -> b.tag().value().equals(cabinet))
                    .toList();
        }
    }

    Knowledge read(Path folder) throws IOException {
        Path usual = folder.resolve(FLEET);
        Path source = fleetFile != null ? fleetFile : modelsFile == null || Files.exists(usual) ? usual : null;
        KioskSnapshot fleet = source == null ? null : JsonFiles.read(source, KioskSnapshot.class);
        ModelBook book = modelsFile == null
                ? present(source, "book", fleet.book())
                : JsonFiles.read(modelsFile, ModelBook.class);
        LimitSet limits = limitsFile != null
                ? JsonFiles.read(limitsFile, LimitSet.class)
                : fleet == null ? LimitSet.initial() : present(source, "limits", fleet.limits());
        Map<String, PointReference> references = new LinkedHashMap<>();
        if (fleet != null) {
            add(source, references, present(source, "references", fleet.references()));
        }
        for (Path file : referenceFiles) {
            add(file, references, JsonFiles.readList(file, PointReference.class));
        }
        Map<String, Baseline> baselines = new LinkedHashMap<>();
        if (fleet != null) {
            addBaselines(source, baselines, present(source, "baselines", fleet.baselines()));
        }
        for (Path file : baselineFiles) {
            addBaselines(file, baselines, JsonFiles.readList(file, Baseline.class));
        }
        return new Knowledge(
                book,
                SharedScatter.over(List.copyOf(references.values())),
                List.copyOf(baselines.values()),
                limits,
                fleet == null ? Priors.USUAL : fleet.priorsInForce());
    }

    private static void add(Path file, Map<String, PointReference> references, List<PointReference> more)
            throws IOException {
        for (PointReference reference : more) {
            present(file, "entry of references", reference);
            references.put(reference.cabinetModelCode() + " " + reference.testPointCode(), reference);
        }
    }

    private static void addBaselines(Path file, Map<String, Baseline> baselines, List<Baseline> more)
            throws IOException {
        for (Baseline baseline : more) {
            present(file, "entry of baselines", baseline);
            present(file, "tag of a baseline", baseline.tag());
            baselines.put(baseline.tag() + " " + baseline.testPointCode(), baseline);
        }
    }

    private static <T> T present(Path file, String field, T value) throws IOException {
        if (value == null) {
            throw new IOException(file + ": " + field + ": is missing");
        }
        return value;
    }
}
