package org.docksweep.kiosk.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.docksweep.contract.FitAnswer;
import org.docksweep.contract.InstalledDriver;
import org.docksweep.contract.OrderedId;
import org.docksweep.contract.PartExchangeBody;
import org.docksweep.contract.PartExchangeBody.Fate;
import org.docksweep.contract.PartExchangeBody.Fitted;
import org.docksweep.contract.PartExchangeBody.Removed;
import org.docksweep.contract.PartExchangeBody.What;
import org.docksweep.contract.PartStock;
import org.docksweep.fleet.NetworkElement;
import org.docksweep.fleet.PartKind;
import org.docksweep.fleet.Reason;
import org.docksweep.kiosk.bench.BenchState.PartAtHand;
import org.docksweep.kiosk.service.ServiceProblem;
import org.docksweep.kiosk.service.ServiceUnreachable;

/**
 * A part about to be put into the cabinet of a job: which, its serial, where, and what becomes of the old one. Whether it
 * fits is asked before, so that a wrong one is refused while it still lies on the bench. A value.
 */
final class PartFitting {
    private final OpenJob job;
    private final PartStock stock;
    private final List<Place> places;
    private final int place;
    private final FitAnswer fit;
    private final String serial;
    private final Fate fate;

    /** Driver position, crossover part, or neither. */
    private record Place(String positionCode, String elementId) {}

    private PartFitting(
            OpenJob job, PartStock stock, List<Place> places, int place, FitAnswer fit, String serial, Fate fate) {
        this.job = job;
        this.stock = stock;
        this.places = places;
        this.place = place;
        this.fit = fit;
        this.serial = serial;
        this.fate = fate;
    }

    /** Begins with a part number that was scanned; empty when the catalogue has no such part. */
    static Optional<PartFitting> begin(BenchOffice office, OpenJob job, String number)
            throws ServiceProblem, ServiceUnreachable {
        Optional<PartStock> stock = office.part(number);
        if (stock.isEmpty()) {
            return Optional.empty();
        }
        List<Place> places = places(job, stock.get().part().kind());
        // The first place it fits, so that a person rarely has to choose.
        PartFitting best = null;
        for (int i = 0; i < places.size(); i++) {
            PartFitting here = new PartFitting(
                    job, stock.get(), places, i, ask(office, job, stock.get(), places.get(i)), null, Fate.SCRAPPED);
            if (here.fit.fits()) {
                return Optional.of(here);
            }
            best = best == null ? here : best;
        }
        return Optional.ofNullable(best);
    }

    private static List<Place> places(OpenJob job, PartKind kind) {
        List<Place> places = new ArrayList<>();
        switch (kind) {
            case DIAPHRAGM, RECONE_KIT, DRIVER_UNIT, MAGNETIC_FLUID ->
                job.positionCodes().forEach(code -> places.add(new Place(code, null)));
            case CROSSOVER_PART -> {
                List<String> ids = new ArrayList<>();
                Optional.ofNullable(job.faultElement()).ifPresent(ids::add);
                job.model().testPoints().stream()
                        .flatMap(point -> point.elements().stream())
                        .filter(element -> !(element instanceof NetworkElement.Driver))
                        .map(NetworkElement::id)
                        .filter(id -> !ids.contains(id))
                        .forEach(ids::add);
                ids.forEach(id -> places.add(new Place(null, id)));
            }
            case CONNECTOR, SEAL, OTHER -> {
                places.add(new Place(null, null));
                job.positionCodes().forEach(code -> places.add(new Place(code, null)));
            }
        }
        return places.isEmpty() ? List.of(new Place(null, null)) : places;
    }

    private static FitAnswer ask(BenchOffice office, OpenJob job, PartStock stock, Place at)
            throws ServiceProblem, ServiceUnreachable {
        return office.fit(stock.part().number(), job.file().job().tag(), at.positionCode(), at.elementId());
    }

    PartFitting otherPlace(BenchOffice office) throws ServiceProblem, ServiceUnreachable {
        int next = (place + 1) % places.size();
        return new PartFitting(job, stock, places, next, ask(office, job, stock, places.get(next)), serial, fate);
    }

    PartFitting otherFate() {
        Fate other = fate == Fate.SCRAPPED ? Fate.KEPT_FOR_REPAIR : Fate.SCRAPPED;
        return new PartFitting(job, stock, places, place, fit, serial, other);
    }

    /** A scan while the part is at hand: its serial, or another part. */
    PartFitting scanned(BenchOffice office, String text) throws ServiceProblem, ServiceUnreachable {
        Optional<PartFitting> other = text.equals(number()) ? Optional.empty() : begin(office, job, text);
        if (other.isPresent()) {
            return other.get();
        }
        return stock.part().serialised() && !text.equals(number())
                ? new PartFitting(job, stock, places, place, fit, text, fate)
                : this;
    }

    String number() {
        return stock.part().number();
    }

    PartAtHand picture() {
        Place at = places.get(place);
        return new PartAtHand(stock, serial, fit, at.positionCode(), at.elementId(), fate);
    }

    List<BenchStep> steps() {
        List<BenchStep> steps = new ArrayList<>();
        if (fit.fits() && stock.inStock() > 0 && !picture().needsSerial()) {
            steps.add(BenchStep.PUT_IN);
        }
        if (fit.fits() && stock.inStock() == 0) {
            steps.add(BenchStep.WAIT_FOR_PART);
        }
        if (places.size() > 1) {
            steps.add(BenchStep.OTHER_PLACE);
        }
        if (removed() == What.DRIVER_UNIT) {
            steps.add(BenchStep.OTHER_FATE);
        }
        steps.add(BenchStep.BACK);
        return steps;
    }

    Reason prompt() {
        if (!fit.fits()) {
            return fit.reason();
        }
        if (stock.inStock() == 0) {
            return Reason.of("bench-ask-part-none", number());
        }
        return Reason.of(picture().needsSerial() ? "bench-ask-part-serial" : "bench-ask-part", number());
    }

    private What removed() {
        return switch (stock.part().kind()) {
            case DIAPHRAGM, RECONE_KIT -> What.DIAPHRAGM;
            case DRIVER_UNIT -> What.DRIVER_UNIT;
            case CROSSOVER_PART, CONNECTOR, SEAL, MAGNETIC_FLUID, OTHER -> What.OTHER;
        };
    }

    PartExchangeBody body(Author author, OpenJob now) {
        Place at = places.get(place);
        Optional<InstalledDriver> installed = now.file().cabinet().drivers().stream()
                .filter(d -> Objects.equals(d.positionCode(), at.positionCode()))
                .findFirst();
        What what = removed();
        String oldSerial = switch (what) {
            case DIAPHRAGM -> installed.map(InstalledDriver::diaphragmSerial).orElse(null);
            case DRIVER_UNIT -> installed.map(InstalledDriver::driverSerial).orElse(null);
            case OTHER -> null;
        };
        return new PartExchangeBody(
                OrderedId.next(),
                author.at(),
                author.by(),
                author.bench(),
                at.positionCode(),
                at.elementId(),
                new Removed(what, oldSerial, what == What.DRIVER_UNIT ? fate : Fate.SCRAPPED),
                new Fitted(number(), serial, 1));
    }
}
