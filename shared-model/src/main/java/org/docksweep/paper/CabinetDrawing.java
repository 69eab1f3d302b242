package org.docksweep.paper;

import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverKind;
import org.docksweep.fleet.DriverPosition;
import org.docksweep.fleet.ModelBook;
import org.docksweep.gate.ReadingState;
import org.docksweep.judge.PositionState;
import org.docksweep.paper.PaperFonts.Weight;

/**
 * The front of a cabinet in its own proportions, every driver with its position code and sign, the driver at fault
 * hatched and carrying its word on black.
 */
final class CabinetDrawing {
    private final Ink ink;
    private final PaperText text;
    private final double fontPt;

    CabinetDrawing(Ink ink, PaperText text, double fontPt) {
        this.ink = ink;
        this.text = text;
        this.fontPt = fontPt;
    }

    void draw(Box box, CabinetModel model, ModelBook book, Iterable<PositionState> states, String faultPositionCode) {
        double scale = Math.min(box.width() / model.widthMm(), box.height() / model.heightMm());
        double width = model.widthMm() * scale;
        double height = model.heightMm() * scale;
        Box front = new Box(box.x() + (box.width() - width) / 2, box.y() + (box.height() - height) / 2, width, height);
        ink.frame(front, 0.5);
        Map<String, PositionState> byCode = java.util.stream.StreamSupport.stream(states.spliterator(), false)
                .collect(Collectors.toMap(PositionState::positionCode, Function.identity(), (a, b) -> b));
        for (DriverPosition position : model.positions()) {
            Box mouth = mouth(front, scale, position);
            boolean atFault = position.code().equals(faultPositionCode);
            outline(mouth, book.driverModel(position.driverModelCode()).kind(), atFault);
        }
        // Words last: a neighbour's outline must not cross them.
        for (DriverPosition position : model.positions()) {
            label(
                    mouth(front, scale, position),
                    front,
                    Math.min(front.width() - 1, roomBeside(position, model) * scale - 0.4),
                    position.code(),
                    byCode.get(position.code()),
                    position.code().equals(faultPositionCode));
        }
    }

    /** Distance to the nearest driver in the same row, in millimetres of the front. */
    private static double roomBeside(DriverPosition position, CabinetModel model) {
        return model.positions().stream()
                .filter(other -> other != position
                        && Math.abs(other.centreYMm() - position.centreYMm()) < position.heightMm() / 2)
                .mapToDouble(other -> Math.abs(other.centreXMm() - position.centreXMm()))
                .min()
                .orElse(model.widthMm());
    }

    private static Box mouth(Box front, double scale, DriverPosition position) {
        double width = position.widthMm() * scale;
        double height = position.heightMm() * scale;
        return new Box(
                front.x() + position.centreXMm() * scale - width / 2,
                front.y() + position.centreYMm() * scale - height / 2,
                width,
                height);
    }

    private void outline(Box mouth, DriverKind kind, boolean atFault) {
        if (atFault) {
            hatch(mouth, kind == DriverKind.CONE);
        }
        double thickness = atFault ? 0.8 : Ink.FINE_MM;
        double inset = Math.min(mouth.width(), mouth.height()) * 0.14;
        if (kind == DriverKind.CONE) {
            ink.ellipse(mouth, thickness);
            ink.ellipse(mouth.inset(inset), Ink.FINE_MM);
        } else {
            Box throat = new Box(
                    mouth.centreX() - mouth.width() * 0.09,
                    mouth.centreY() - mouth.height() * 0.3,
                    mouth.width() * 0.18,
                    mouth.height() * 0.6);
            ink.frame(mouth, thickness);
            ink.frame(throat, Ink.FINE_MM);
            ink.rule(mouth.x(), mouth.y(), throat.x(), throat.y(), Ink.FINE_MM);
            ink.rule(mouth.right(), mouth.y(), throat.right(), throat.y(), Ink.FINE_MM);
            ink.rule(mouth.x(), mouth.bottom(), throat.x(), throat.bottom(), Ink.FINE_MM);
            ink.rule(mouth.right(), mouth.bottom(), throat.right(), throat.bottom(), Ink.FINE_MM);
        }
    }

    private void hatch(Box mouth, boolean round) {
        ink.canvas().saveState();
        if (round) {
            ink.canvas().ellipse(ink.x(mouth.x()), ink.y(mouth.bottom()), ink.x(mouth.right()), ink.y(mouth.y()));
        } else {
            ink.canvas()
                    .rectangle(
                            ink.x(mouth.x()),
                            ink.y(mouth.bottom()),
                            Ink.points(mouth.width()),
                            Ink.points(mouth.height()));
        }
        ink.canvas().clip();
        ink.canvas().newPath();
        for (double shift = -mouth.height(); shift < mouth.width(); shift += 1.4) {
            ink.rule(mouth.x() + shift, mouth.bottom(), mouth.x() + shift + mouth.height(), mouth.y(), Ink.FINE_MM);
        }
        ink.canvas().restoreState();
    }

    private void label(Box mouth, Box front, double room, String code, PositionState state, boolean atFault) {
        ReadingState reading = state == null ? ReadingState.NOT_JUDGED : state.state();
        Sign sign = atFault ? Sign.CROSS : Sign.of(reading);
        boolean worded = state != null && (atFault || reading == ReadingState.FAULT || reading == ReadingState.WATCH);
        String words = worded ? code + " " + text.reason(state.word()) : code;
        if (!worded && state != null && state.headline() != null) {
            String headline = code + " " + state.headline();
            boolean fits = ink.fonts().widthMm(Weight.BOLD, fontPt, headline) < mouth.width() - fontPt * 0.45;
            words = fits ? headline : code;
        }
        double size = ink.fittingSize(Weight.BOLD, fontPt, 4.5, room - fontPt * 0.45, words);
        double side = size * 0.36;
        if (worded && ink.fonts().widthMm(Weight.BOLD, size, words) > room - side - 1.6) {
            // The hatching already says which driver; the word says what.
            words = text.reason(state.word());
        }
        words = ink.fonts().shorten(Weight.BOLD, size, room - side - 1.6, words);
        double width = ink.fonts().widthMm(Weight.BOLD, size, words) + side + 1.6;
        double height = Ink.lineMm(size) + 0.3;
        double x = Math.max(front.x() + 0.5, Math.min(mouth.centreX() - width / 2, front.right() - 0.5 - width));
        Box plate = new Box(x, mouth.centreY() - height / 2, width, height);
        ink.fill(plate, atFault ? 0 : 1);
        ink.frame(plate, Ink.FINE_MM);
        String shown = words;
        double baseline = plate.centreY() + size * PaperFonts.CAP_HEIGHT / Ink.POINTS_PER_MM / 2;
        Runnable lettering = () -> ink.text(Weight.BOLD, size, plate.x() + side + 1.1, baseline, shown);
        if (atFault) {
            Box ground = new Box(plate.x() + 0.35, plate.centreY() - side / 2 - 0.15, side + 0.3, side + 0.3);
            ink.fill(ground, 1);
            sign.draw(ink, plate.x() + 0.5, plate.centreY() - side / 2, side);
            ink.white(lettering);
        } else {
            sign.draw(ink, plate.x() + 0.5, plate.centreY() - side / 2, side);
            lettering.run();
        }
    }
}
