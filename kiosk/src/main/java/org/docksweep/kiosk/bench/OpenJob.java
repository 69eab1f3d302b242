package org.docksweep.kiosk.bench;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.BenchJobBody;
import org.docksweep.contract.BenchJobFile;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.MeasurementBody;
import org.docksweep.contract.OrderedId;
import org.docksweep.contract.PartExchangeBody;
import org.docksweep.contract.StepTickBody;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.ProcedureCard;
import org.docksweep.fleet.Reason;
import org.docksweep.gate.ReadingState;
import org.docksweep.judge.PointJudgement;
import org.docksweep.judge.PositionState;
import org.docksweep.kiosk.bench.BenchState.CardAtHand;
import org.docksweep.kiosk.bench.BenchState.JobAtHand;
import org.docksweep.kiosk.dock.CurvePictures;
import org.docksweep.kiosk.dock.DockState.CurvePicture;
import org.docksweep.kiosk.fleet.LocalFleet;
import org.docksweep.kiosk.service.ServiceProblem;
import org.docksweep.kiosk.service.ServiceUnreachable;
import org.docksweep.suspect.Suspect;

/**
 * The job at hand as last read from the service, with the card that is shown. A value.
 *
 * @param file everything the service has of it
 * @param model cabinet model
 * @param positions state of its positions
 * @param curve curve, if any
 * @param card card shown, or null
 * @param cardIndex which of the suggested ones
 * @param recorded measurements of the check-in that brought it here, those with a recording
 */
record OpenJob(
        BenchJobFile file,
        CabinetModel model,
        List<PositionState> positions,
        Optional<CurvePicture> curve,
        ProcedureCard card,
        int cardIndex,
        List<MeasurementBody> recorded) {

    static OpenJob open(BenchOffice office, JobCode code, LocalFleet fleet) throws ServiceProblem, ServiceUnreachable {
        BenchJobFile file = office.file(code);
        CabinetModel model = fleet.snapshot().book().cabinetModel(file.job().modelCode());
        List<UUID> checkIns = file.job().checkInIds();
        List<PositionState> positions = List.of();
        Optional<CurvePicture> curve = Optional.empty();
        List<MeasurementBody> recorded = List.of();
        if (!checkIns.isEmpty()) {
            CheckInBody failed = office.checkIn(checkIns.get(checkIns.size() - 1));
            positions = failed.positions();
            recorded = failed.measurements().stream()
                    .filter(m -> m.recordingSha256() != null)
                    .toList();
            Map<String, PointJudgement> last = new LinkedHashMap<>();
            for (MeasurementBody measurement : failed.measurements()) {
                last.put(measurement.judgement().testPointCode(), measurement.judgement());
            }
            curve = CurvePictures.deciding(
                    List.copyOf(last.values()),
                    failed.modelCode(),
                    fleet.references(),
                    fleet.baselinesOf(failed.tag()));
        }
        ProcedureCard card =
                file.cards().isEmpty() ? null : office.card(file.cards().get(0));
        return new OpenJob(file, model, positions, curve, card, 0, recorded);
    }

    /** The same job as the service has it now. */
    OpenJob read(BenchOffice office) throws ServiceProblem, ServiceUnreachable {
        return new OpenJob(office.file(code()), model, positions, curve, card, cardIndex, recorded);
    }

    /** State of a position as known now. */
    PositionState stateOf(String positionCode) {
        return positions.stream()
                .filter(s -> s.positionCode().equals(positionCode))
                .findFirst()
                .orElseGet(() ->
                        new PositionState(positionCode, ReadingState.NOT_JUDGED, Reason.of("word-not-judged"), null));
    }

    /** The same job after a sweep at this bench. */
    OpenJob sweptHere(List<PositionState> states, Optional<CurvePicture> picture) {
        return new OpenJob(file, model, states, picture, card, cardIndex, recorded);
    }

    OpenJob otherCard(BenchOffice office) throws ServiceProblem, ServiceUnreachable {
        int next = (cardIndex + 1) % file.cards().size();
        return new OpenJob(
                file, model, positions, curve, office.card(file.cards().get(next)), next, recorded);
    }

    JobCode code() {
        return file.job().code();
    }

    BenchJobBody.State state() {
        return file.job().state();
    }

    Optional<BenchJobFile.Card> suggested() {
        return file.cards().isEmpty()
                ? Optional.empty()
                : Optional.of(file.cards().get(cardIndex));
    }

    /** Position the finding is about: the card's, else the one at fault. */
    String faultPosition() {
        return suggested()
                .map(BenchJobFile.Card::positionCode)
                .orElse(file.job().faultPositionCode());
    }

    /** Crossover part the first suspect names, unless a driver is at hand. */
    String faultElement() {
        return file.job().suspects().stream()
                .findFirst()
                .filter(s -> s.positionCode() == null)
                .map(Suspect::elementId)
                .orElse(null);
    }

    /** Codes of steps of the card that are ticked, in the order ticked. */
    private Set<String> done() {
        Set<String> done = new LinkedHashSet<>();
        suggested().ifPresent(shown -> {
            for (StepTickBody tick : file.ticks()) {
                if (tick.purpose() == shown.purpose() && Objects.equals(tick.positionCode(), shown.positionCode())) {
                    done.remove(tick.stepCode());
                    if (tick.done()) {
                        done.add(tick.stepCode());
                    }
                }
            }
        });
        return done;
    }

    Optional<String> lastTicked() {
        return done().stream().reduce((first, second) -> second);
    }

    Optional<String> nextStep() {
        return cardAtHand().flatMap(CardAtHand::next).map(ProcedureCard.Step::code);
    }

    OpenJob tick(BenchOffice office, Author author, boolean forward) throws ServiceProblem, ServiceUnreachable {
        String step = (forward ? nextStep() : lastTicked()).orElseThrow();
        BenchJobFile.Card shown = suggested().orElseThrow();
        UUID id = OrderedId.next();
        office.add(
                code(),
                ApiPaths.TICKS,
                id,
                new StepTickBody(
                        id,
                        author.at(),
                        author.by(),
                        author.bench(),
                        shown.purpose(),
                        shown.positionCode(),
                        step,
                        forward));
        return read(office);
    }

    private Optional<CardAtHand> cardAtHand() {
        return Optional.ofNullable(card)
                .map(c -> new CardAtHand(
                        c,
                        suggested().map(BenchJobFile.Card::positionCode).orElse(null),
                        done(),
                        cardIndex + 1,
                        file.cards().size()));
    }

    /** Places a part may go, the likely one first: positions of a driver model, or crossover parts. */
    List<String> positionCodes() {
        List<String> codes = new ArrayList<>();
        String likely = faultPosition();
        if (likely != null) {
            codes.add(likely);
        }
        model.positions().stream()
                .map(p -> p.code())
                .filter(c -> !codes.contains(c))
                .forEach(codes::add);
        return codes;
    }

    /** Positions at which a part was exchanged, in the order of the work. */
    List<String> worked() {
        return file.exchanges().stream()
                .map(PartExchangeBody::positionCode)
                .filter(Objects::nonNull)
                .distinct()
                .toList();
    }

    JobAtHand picture() {
        return new JobAtHand(file, model, positions, curve, cardAtHand());
    }
}
