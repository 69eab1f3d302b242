package org.docksweep.fleet;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Whether a part of the catalogue fits a place in a cabinet, and if not, why not. */
public final class PartFit {
    /** Rated impedances are nominal: 8 ohm is 8 ohm. Only rounding is forgiven. */
    private static final double IMPEDANCE_RELATIVE = 0.01;
    /** A crossover part is replaced by its value; common practice, no source. */
    private static final double VALUE_RELATIVE = 0.05;

    private PartFit() {}

    /**
     * A place a part may go.
     *
     * @param model cabinet model
     * @param position driver position, or null when no driver is concerned
     * @param driver driver model that sits there, or belongs there when it is empty; null without a position
     * @param elementId crossover part to be replaced, or null
     */
    public record Place(CabinetModel model, DriverPosition position, DriverModel driver, String elementId) {}

    /**
     * Why a part does not fit.
     *
     * @param part part
     * @param place place
     * @return the reason; empty when it fits
     */
    public static Optional<Reason> refusal(Part part, Place place) {
        return switch (part.kind()) {
            case DIAPHRAGM, RECONE_KIT -> movingPart(part, place);
            case DRIVER_UNIT -> driverUnit(part, place);
            case CROSSOVER_PART -> element(part, place);
            case CONNECTOR, SEAL, MAGNETIC_FLUID, OTHER -> other(part, place);
        };
    }

    private static Optional<Reason> movingPart(Part part, Place place) {
        return place.position() == null
                ? Optional.of(Reason.of("part-fit-no-position", part.number()))
                : refusal(part, place.driver());
    }

    /**
     * Why the moving part of a driver does not fit a driver.
     *
     * @param part diaphragm or recone kit
     * @param driver driver model
     * @return the reason; empty when it fits
     */
    public static Optional<Reason> refusal(Part part, DriverModel driver) {
        boolean movingPart = part.kind() == PartKind.DIAPHRAGM || part.kind() == PartKind.RECONE_KIT;
        return movingPart && part.fitsDriverModels().contains(driver.code())
                ? impedance(part, driver)
                : Optional.of(Reason.of(
                        "part-fit-wrong-driver", part.number(), list(part.fitsDriverModels()), driver.code()));
    }

    private static Optional<Reason> driverUnit(Part part, Place place) {
        if (place.position() == null) {
            return Optional.of(Reason.of("part-fit-no-position", part.number()));
        }
        String belongs = place.position().driverModelCode();
        if (!part.fitsDriverModels().contains(belongs)) {
            return Optional.of(Reason.of(
                    "part-fit-wrong-unit",
                    part.number(),
                    list(part.fitsDriverModels()),
                    belongs,
                    place.position().code()));
        }
        return place.driver().code().equals(belongs) ? impedance(part, place.driver()) : Optional.empty();
    }

    private static Optional<Reason> impedance(Part part, DriverModel driver) {
        double rated = driver.ratedImpedanceOhm();
        return Math.abs(part.ratedImpedanceOhm() - rated) <= IMPEDANCE_RELATIVE * rated
                ? Optional.empty()
                : Optional.of(Reason.of(
                        "part-fit-wrong-impedance",
                        part.number(),
                        plain(part.ratedImpedanceOhm()),
                        driver.code(),
                        plain(rated)));
    }

    private static Optional<Reason> element(Part part, Place place) {
        Optional<NetworkElement> wanted = place.model().testPoints().stream()
                .flatMap(p -> p.elements().stream())
                .filter(e -> e.id().equals(place.elementId()))
                .findFirst();
        if (wanted.isEmpty()) {
            return Optional.of(Reason.of(
                    "part-fit-no-element",
                    part.number(),
                    place.model().code(),
                    place.elementId() == null ? "-" : place.elementId()));
        }
        NetworkElement element = wanted.get();
        double value = valueAs(part.element().kind(), element);
        if (Double.isNaN(value)) {
            return Optional.of(Reason.of("part-fit-wrong-element", part.number(), element.id()));
        }
        return Math.abs(part.element().value() / value - 1) <= VALUE_RELATIVE
                ? Optional.empty()
                : Optional.of(Reason.of(
                        "part-fit-wrong-value",
                        part.number(),
                        value(part.element().kind(), part.element().value()),
                        element.id(),
                        value(part.element().kind(), value)));
    }

    /** Value of a network element, NaN when it is of another kind. */
    private static double valueAs(Part.ElementKind kind, NetworkElement element) {
        if (kind == Part.ElementKind.CAPACITOR && element instanceof NetworkElement.Capacitor capacitor) {
            return capacitor.capacitanceF();
        }
        if (kind == Part.ElementKind.INDUCTOR && element instanceof NetworkElement.Inductor coil) {
            return coil.inductanceH();
        }
        if (kind == Part.ElementKind.RESISTOR && element instanceof NetworkElement.Resistor resistor) {
            return resistor.resistanceOhm();
        }
        return Double.NaN;
    }

    private static Optional<Reason> other(Part part, Place place) {
        List<String> cabinets = part.fitsCabinetModels();
        if (!cabinets.isEmpty() && !cabinets.contains(place.model().code())) {
            return Optional.of(Reason.of(
                    "part-fit-wrong-cabinet",
                    part.number(),
                    list(cabinets),
                    place.model().code()));
        }
        List<String> drivers = part.fitsDriverModels();
        boolean fits = drivers.isEmpty()
                || (place.driver() == null
                        ? place.model().positions().stream().anyMatch(p -> drivers.contains(p.driverModelCode()))
                        : drivers.contains(place.driver().code()));
        return fits
                ? Optional.empty()
                : Optional.of(Reason.of(
                        "part-fit-wrong-driver",
                        part.number(),
                        list(drivers),
                        place.driver() == null
                                ? place.model().code()
                                : place.driver().code()));
    }

    private static String list(List<String> codes) {
        return String.join(", ", codes);
    }

    private static String value(Part.ElementKind kind, double value) {
        return switch (kind) {
            case CAPACITOR -> plain(value * 1e6) + " \u00b5F";
            case INDUCTOR -> plain(value * 1e3) + " mH";
            case RESISTOR -> plain(value) + " \u03a9";
        };
    }

    private static String plain(double value) {
        String text = String.format(Locale.ROOT, "%.3f", value);
        return text.replaceAll("\\.?0+$", "");
    }
}
