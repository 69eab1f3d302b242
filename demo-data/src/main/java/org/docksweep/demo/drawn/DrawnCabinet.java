package org.docksweep.demo.drawn;

import java.util.ArrayList;
import java.util.List;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.DriverPosition;
import org.docksweep.fleet.Enclosure;
import org.docksweep.fleet.EnclosureKind;
import org.docksweep.fleet.Feed;
import org.docksweep.fleet.LevelMask;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.fleet.Way;

/** One cabinet model of a drawn fleet. */
final class DrawnCabinet {
    /** Topologies take turns, so that none is rare. */
    private static final int TOPOLOGIES = 8;

    private static final double MIDDLE_LOW_HZ = 350;
    private static final double MIDDLE_HIGH_HZ = 900;

    private final Dice dice;
    private final DrawnDrivers drivers;
    private final String code;
    private final List<DriverPosition> positions = new ArrayList<>();
    private final List<Enclosure> enclosures = new ArrayList<>();
    private final List<TestPoint> points = new ArrayList<>();

    DrawnCabinet(Dice dice, DrawnDrivers drivers, String code) {
        this.dice = dice;
        this.drivers = drivers;
        this.code = code;
    }

    CabinetModel model(int turn) {
        Feed feed = Feed.PASSIVE;
        switch (turn % TOPOLOGIES) {
            case 0, 1 -> twoWays(false);
            case 2 -> twoWays(true);
            case 3, 4 -> threeWays();
            case 5 -> subwoofer();
            case 6 -> {
                biamped();
                feed = Feed.BIAMPED;
            }
            default -> {
                powered();
                feed = Feed.POWERED;
            }
        }
        return new CabinetModel(code, "Drawn cabinet " + code, feed, 400, 700, 20, positions, enclosures, points);
    }

    private void twoWays(boolean two) {
        DriverModel low = drivers.low(two ? 16 : dice.oneOf(4.0, 8.0, 8.0, 8.0));
        DriverModel high = drivers.compression();
        double crossHz = crossing(high);
        DrawnNetwork net = new DrawnNetwork(dice);
        List<String> lows = two ? List.of("LF1", "LF2") : List.of("LF");
        lowWay(net, lows, low, dice.wholeBetween(two ? 1 : 0, 4), crossHz);
        highWay(net, high, crossHz);
        box(lows, low);
        horn();
        lows.forEach(p -> position(p, Way.LF, low));
        position("HF", Way.HF, high);
        point("IN", all(), fullRange(), net);
    }

    private void threeWays() {
        DriverModel low = drivers.low(8);
        DriverModel middle = drivers.middle(8);
        DriverModel high = drivers.compression();
        double lowHz = dice.between(MIDDLE_LOW_HZ, MIDDLE_HIGH_HZ);
        double highHz = Math.max(crossing(high), 3 * lowHz);
        DrawnNetwork net = new DrawnNetwork(dice);
        lowWay(net, List.of("LF"), low, dice.wholeBetween(1, 3), lowHz);
        double middleOhm = net.loadOhm(middle);
        String node = net.highPass(dice.wholeBetween(1, 2), lowHz, middleOhm);
        net.driver(net.lowPassFrom(node, dice.wholeBetween(0, 2), highHz, middleOhm), "MF", dice.chance(0.4));
        highWay(net, high, highHz);
        box(List.of("LF"), low);
        enclosures.add(
                new Enclosure("pod", EnclosureKind.CLOSED, List.of("MF"), dice.between(1, 3), 0, dice.between(5, 10)));
        horn();
        position("LF", Way.LF, low);
        position("MF", Way.MF, middle);
        position("HF", Way.HF, high);
        point("IN", all(), fullRange(), net);
    }

    private void subwoofer() {
        boolean two = dice.chance(0.5);
        boolean inSeries = two && dice.chance(0.3);
        DriverModel low = drivers.sub(inSeries ? 4 : 8);
        List<String> lows = two ? List.of("LF1", "LF2") : List.of("LF");
        DrawnNetwork net = new DrawnNetwork(dice);
        String node = net.lowPass(dice.chance(0.25) ? 2 : 0, dice.between(100, 180), net.loadOhm(low) / lows.size());
        if (two) {
            net.pair(node, "LF1", "LF2", inSeries);
        } else {
            net.driver(node, "LF", false);
        }
        box(lows, low);
        lows.forEach(p -> position(p, Way.LF, low));
        point("IN", lows, mask(15, 1.5, 4000), net);
    }

    private void biamped() {
        DriverModel low = drivers.low(8);
        DriverModel high = drivers.compression();
        DrawnNetwork lowNet = new DrawnNetwork(dice);
        lowNet.driver("in", "LF", false);
        DrawnNetwork highNet = new DrawnNetwork(dice);
        boolean protectedByCapacitor = dice.chance(0.5);
        highNet.driver(protectedByCapacitor ? highNet.protect(dice.between(15e-6, 60e-6)) : "in", "HF", false);
        box(List.of("LF"), low);
        horn();
        position("LF", Way.LF, low);
        position("HF", Way.HF, high);
        point("LF", List.of("LF"), mask(16, 1.5, 8000), lowNet);
        double mainHz = high.resonances().get(0).frequencyHz();
        point(
                "HF",
                List.of("HF"),
                new LevelMask(List.of(
                        new LevelMask.Point(250, 0.4),
                        new LevelMask.Point(0.95 * mainHz, 0.4),
                        new LevelMask.Point(1.05 * mainHz, 1),
                        new LevelMask.Point(20_000, 1))),
                highNet);
    }

    private void powered() {
        DriverModel low = drivers.low(8);
        DriverModel high = drivers.compression();
        box(List.of("LF"), low);
        horn();
        position("LF", Way.LF, low);
        position("HF", Way.HF, high);
        points.add(new TestPoint(
                "LINE", TestPointKind.LINE_INPUT, "line in, pin 2 hot", all(), 0, mask(30, 0.05, 20_000), List.of()));
    }

    private void lowWay(DrawnNetwork net, List<String> lows, DriverModel low, int order, double crossHz) {
        double loadOhm = net.loadOhm(low) / lows.size();
        String node = net.lowPass(order, crossHz, loadOhm);
        if (order > 1 && dice.chance(0.4)) {
            net.flatten(node, loadOhm, dice.between(0.6, 1.5) * crossHz);
        }
        if (lows.size() == 2) {
            net.pair(node, lows.get(0), lows.get(1), false);
        } else {
            net.driver(node, lows.get(0), false);
        }
    }

    private void highWay(DrawnNetwork net, DriverModel high, double crossHz) {
        double loadOhm = net.loadOhm(high);
        String node = net.pad(net.highPass(dice.wholeBetween(1, 4), crossHz, loadOhm), loadOhm);
        net.driver(node, "HF", dice.chance(0.35));
    }

    /** A horn driver is used from well above its main resonance. */
    private double crossing(DriverModel high) {
        return high.resonances().get(0).frequencyHz() * dice.between(1.6, 3);
    }

    private void box(List<String> lows, DriverModel low) {
        double freeHz = low.resonances().get(0).frequencyHz();
        boolean vented = dice.chance(0.7);
        enclosures.add(new Enclosure(
                "box",
                vented ? EnclosureKind.VENTED : EnclosureKind.CLOSED,
                lows,
                dice.between(0.7, 2.2),
                vented ? freeHz * dice.between(0.9, 1.3) : 0,
                dice.between(5, 12)));
    }

    private void horn() {
        enclosures.add(new Enclosure("horn", EnclosureKind.HORN, List.of("HF"), 0, 0, 0));
    }

    private void position(String position, Way way, DriverModel driver) {
        int above = positions.size();
        positions.add(new DriverPosition(position, way, driver.code(), 200, 600 - 200.0 * above, 180, 180));
    }

    private List<String> all() {
        List<String> codes = new ArrayList<>();
        enclosures.forEach(e -> codes.addAll(e.positionCodes()));
        return codes;
    }

    private void point(String point, List<String> reached, LevelMask mask, DrawnNetwork net) {
        points.add(new TestPoint(point, TestPointKind.TERMINALS, point + " + / -", reached, 8, mask, net.elements()));
    }

    private static LevelMask fullRange() {
        return mask(20, 1.5, 20_000);
    }

    private static LevelMask mask(double fromHz, double voltageVrms, double toHz) {
        return new LevelMask(List.of(new LevelMask.Point(fromHz, voltageVrms), new LevelMask.Point(toHz, voltageVrms)));
    }
}
