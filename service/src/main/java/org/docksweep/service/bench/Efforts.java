package org.docksweep.service.bench;

import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.docksweep.contract.BenchJobFile;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverBenchData;
import org.docksweep.fleet.DriverKind;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.ProcedureCards;
import org.docksweep.fleet.ProcedurePurpose;
import org.docksweep.suspect.FaultKind;
import org.docksweep.suspect.Suspect;

/** Which procedures the suspects of a job suggest, and what effort is to be expected. */
final class Efforts {
    /** Effort for a job of which nothing is known: look for yourself. Common practice, no source. */
    private static final int LOOKING_MINUTES = 45;

    private final CabinetModel model;
    private final ModelBook book;
    private final Map<String, DriverBenchData> data;

    Efforts(CabinetModel model, ModelBook book, Map<String, DriverBenchData> data) {
        this.model = model;
        this.book = book;
        this.data = data;
    }

    /** Procedures suggested, most probable first. */
    List<BenchJobFile.Card> cards(List<Suspect> suspects) {
        Map<List<String>, BenchJobFile.Card> cards = new LinkedHashMap<>();
        for (Suspect suspect : suspects) {
            BenchJobFile.Card card = card(suspect);
            if (card != null) {
                cards.merge(
                        Arrays.asList(card.purpose().name(), card.positionCode()),
                        card,
                        (a, b) -> new BenchJobFile.Card(
                                a.purpose(),
                                a.positionCode(),
                                a.driverModelCode(),
                                Math.min(1, a.probability() + b.probability())));
            }
        }
        return cards.values().stream()
                .sorted(Comparator.comparingDouble(BenchJobFile.Card::probability)
                        .reversed())
                .toList();
    }

    private BenchJobFile.Card card(Suspect suspect) {
        DriverModel driver = suspect.positionCode() == null
                ? null
                : model.positions().stream()
                        .filter(p -> p.code().equals(suspect.positionCode()))
                        .findFirst()
                        .map(p -> book.driverModel(p.driverModelCode()))
                        .orElse(null);
        ProcedurePurpose purpose = purpose(suspect.kind(), driver);
        return purpose == null
                ? null
                : new BenchJobFile.Card(
                        purpose, suspect.positionCode(), driver == null ? null : driver.code(), suspect.probability());
    }

    private static ProcedurePurpose purpose(FaultKind kind, DriverModel driver) {
        return switch (kind) {
            case DRIVER_OPEN,
                    DRIVER_SHORTED,
                    WRONG_IMPEDANCE_PART,
                    COIL_SEIZED,
                    SHORTED_TURNS,
                    MAGNET_WEAK,
                    WAY_WEAK,
                    COIL_RUBS ->
                driver == null
                        ? null
                        : driver.kind() == DriverKind.COMPRESSION
                                ? ProcedurePurpose.DIAPHRAGM_REPLACEMENT
                                : ProcedurePurpose.RECONE;
            case CONTACT_RESISTANCE,
                    INTERMITTENT_CONTACT,
                    POLARITY_REVERSED,
                    TERMINALS_SHORTED,
                    NOTHING_CONNECTED,
                    WAY_REVERSED ->
                ProcedurePurpose.CONNECTOR;
            case PART_OPEN, PART_SHORTED, PART_DRIFTED -> ProcedurePurpose.CROSSOVER_PART;
            case LEAK, PORT_BLOCKED -> ProcedurePurpose.AIR_TIGHTNESS;
            case WRONG_SOCKET, WRONG_LABEL, LOOSE_PART, UNKNOWN -> null;
        };
    }

    /** Mean of the efforts of the suspects' procedures, weighted with their probabilities, rounded to minutes. */
    int minutes(List<Suspect> suspects) {
        double sum = 0;
        double weight = 0;
        for (Suspect suspect : suspects) {
            BenchJobFile.Card card = card(suspect);
            sum += suspect.probability() * (card == null ? LOOKING_MINUTES : minutes(card));
            weight += suspect.probability();
        }
        return weight > 0 ? (int) Math.round(sum / weight) : LOOKING_MINUTES;
    }

    private int minutes(BenchJobFile.Card card) {
        return card.driverModelCode() == null
                ? ProcedureCards.generic(card.purpose()).effortMinutes()
                : ProcedureCards.of(
                                card.purpose(),
                                book.driverModel(card.driverModelCode()),
                                data.get(card.driverModelCode()))
                        .effortMinutes();
    }
}
