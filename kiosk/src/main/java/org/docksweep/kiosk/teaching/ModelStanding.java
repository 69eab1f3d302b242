package org.docksweep.kiosk.teaching;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.TaughtPoint;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.gate.PointReference;
import org.docksweep.kiosk.fleet.LocalFleet;
import org.docksweep.kiosk.fleet.SafetyTests;

/**
 * A model and how it stands.
 *
 * @param model the model
 * @param points its test points, each taught or not
 * @param ready cabinets that can go out
 * @param out cabinets that are with customers
 * @param bench cabinets waiting for or in repair
 * @param held cabinets held for a person, for safety or missing
 * @param safetyTests cabinets whose periodic electrical safety test is due within 30 days, or overdue
 */
public record ModelStanding(
        CabinetModel model,
        List<Point> points,
        int ready,
        int out,
        int bench,
        int held,
        SafetyTests.Count safetyTests) {
    public ModelStanding {
        points = List.copyOf(points);
    }

    /**
     * A test point.
     *
     * @param code its code
     * @param units known-good units it was taught from, 0 when it was not taught
     * @param taught when and by whom, as far as the service said so
     */
    public record Point(String code, int units, Optional<TaughtPoint> taught) {}

    /**
     * Whether the gate judges this model.
     *
     * @return true when every test point is taught
     */
    public boolean taught() {
        return points.stream().allMatch(p -> p.units() > 0);
    }

    /**
     * Units of the point taught from the fewest.
     *
     * @return units
     */
    public int fewestUnits() {
        return points.stream().mapToInt(Point::units).min().orElse(0);
    }

    static List<ModelStanding> of(LocalFleet fleet, List<TaughtPoint> taught, LocalDate today) {
        List<ModelStanding> standings = new ArrayList<>();
        for (CabinetModel model : fleet.snapshot().book().cabinetModels()) {
            List<CabinetBody> bodies = fleet.snapshot().cabinets().stream()
                    .filter(c -> c.modelCode().equals(model.code()))
                    .toList();
            List<CabinetStatus> cabinets =
                    bodies.stream().map(CabinetBody::status).toList();
            int ready = count(cabinets, CabinetStatus.READY);
            int out = count(cabinets, CabinetStatus.OUT);
            int bench = count(cabinets, CabinetStatus.BENCH);
            int gone = count(cabinets, CabinetStatus.RETIRED);
            standings.add(new ModelStanding(
                    model,
                    model.testPoints().stream()
                            .map(p -> point(model, p.code(), fleet, taught))
                            .toList(),
                    ready,
                    out,
                    bench,
                    cabinets.size() - ready - out - bench - gone,
                    SafetyTests.count(bodies, today)));
        }
        standings.sort(Comparator.comparing(s -> s.model().code()));
        return standings;
    }

    private static int count(List<CabinetStatus> cabinets, CabinetStatus status) {
        return (int) cabinets.stream().filter(status::equals).count();
    }

    private static Point point(CabinetModel model, String code, LocalFleet fleet, List<TaughtPoint> taught) {
        int units = fleet.references().stream()
                .filter(r -> r.cabinetModelCode().equals(model.code())
                        && r.testPointCode().equals(code))
                .mapToInt(PointReference::unitCount)
                .findFirst()
                .orElse(0);
        Optional<TaughtPoint> by = taught.stream()
                .filter(t ->
                        t.modelCode().equals(model.code()) && t.testPointCode().equals(code))
                .findFirst();
        return new Point(code, by.map(TaughtPoint::unitCount).orElse(units), by);
    }
}
