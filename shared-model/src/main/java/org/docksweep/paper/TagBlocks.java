package org.docksweep.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.fleet.DriverKind;
import org.docksweep.fleet.Feed;
import org.docksweep.fleet.VisualItem;
import org.docksweep.paper.PaperFonts.Weight;
import org.docksweep.suspect.Suspect;

/** Blocks of the body of a tag. Each draws within the box it is given, whatever the length of its words. */
final class TagBlocks {
    /** From this mass on two people lift (common practice, no source). */
    static final double TWO_PEOPLE_KG = 25;

    private static final int SUSPECTS_SHOWN = 3;
    private static final int EVENTS_SHOWN = 3;
    private static final double LEAST_PT = 5;

    private final TagScene scene;
    private final Ink ink;
    private final PaperText text;
    private final double fontPt;

    TagBlocks(TagScene scene, double fontPt) {
        this.scene = scene;
        this.ink = scene.ink();
        this.text = scene.text();
        this.fontPt = fontPt;
    }

    /** Sign and word of the verdict on black, then the deciding sentence. */
    void verdict(Box box, double sentencePt) {
        String word = scene.verdictWord();
        double size = sentencePt + 3;
        double side = size * 0.34;
        double plateHeight = Ink.lineMm(size) + 0.6;
        double plateWidth = ink.fonts().widthMm(Weight.BOLD, size, word) + side + 4;
        Box plate = new Box(box.x(), box.y(), plateWidth, plateHeight);
        ink.fill(plate, 0);
        Box ground = new Box(plate.x() + 1, plate.centreY() - side / 2 - 0.2, side + 0.4, side + 0.4);
        ink.fill(ground, 1);
        scene.verdictSign().draw(ink, ground.x() + 0.2, ground.y() + 0.2, side);
        double baseline = plate.centreY() + size * PaperFonts.CAP_HEIGHT / Ink.POINTS_PER_MM / 2;
        ink.white(() -> ink.text(Weight.BOLD, size, plate.x() + side + 2.4, baseline, word));
        Box sentence = new Box(plate.right() + 2, box.y(), box.width() - plateWidth - 2, box.height());
        ink.paragraph(
                Weight.SEMIBOLD,
                sentencePt,
                LEAST_PT + 1,
                sentence,
                text.reason(scene.checkIn().reason()));
    }

    void heading(Box box, String words) {
        ink.line(Weight.BOLD, fontPt, LEAST_PT, box.x(), box.y() + Ink.ascentMm(fontPt), box.width(), words);
        double y = box.y() + Ink.lineMm(fontPt) - 0.2;
        ink.rule(box.x(), y, box.right(), y, Ink.FINE_MM);
    }

    double headingMm() {
        return Ink.lineMm(fontPt) + 0.5;
    }

    /** Driver at fault: model, serials, source, date, polarity mark. */
    void driver(Box box) {
        List<String> facts = driverFacts();
        if (facts.isEmpty()) {
            return;
        }
        heading(box, text.get("tag.driver", scene.checkIn().faultPositionCode()));
        Box rest = box.below(headingMm());
        double polarityMm = Math.min(rest.height() / 2, 2 * Ink.lineMm(fontPt));
        Box factsBox = new Box(rest.x(), rest.y(), rest.width(), rest.height() - polarityMm);
        double used = ink.paragraph(Weight.REGULAR, fontPt, LEAST_PT, factsBox, String.join(" \u00b7 ", facts));
        ink.paragraph(Weight.SEMIBOLD, fontPt, LEAST_PT, rest.below(used), polarity());
    }

    /** The same without a heading, for a low and wide box. */
    void driverInline(Box box) {
        List<String> facts = driverFacts();
        if (!facts.isEmpty()) {
            String lead = text.get("tag.driver", scene.checkIn().faultPositionCode()) + ": ";
            ink.paragraphs(
                    Weight.REGULAR, fontPt, LEAST_PT, box, List.of(lead + String.join(" \u00b7 ", facts), polarity()));
        }
    }

    private String polarity() {
        return scene.driverModelAtFault()
                .filter(model -> model.polarityMark() != null)
                .map(model -> text.get("tag.polarity", model.polarityMark()))
                .orElse(text.get("tag.polarity.unknown"));
    }

    private List<String> driverFacts() {
        List<String> facts = new ArrayList<>();
        scene.driverModelAtFault().ifPresent(model -> facts.add(model.code()));
        scene.driverAtFault().ifPresent(driver -> {
            facts.add(text.get("tag.serial", driver.driverSerial()));
            String serial =
                    driver.diaphragmSerial() == null ? text.get("tag.diaphragm.no-serial") : driver.diaphragmSerial();
            facts.add(text.get("tag.diaphragm", serial, text.word("source", driver.diaphragmSource())));
            facts.add(text.get("tag.installed", text.date(driver.installedOn())));
        });
        return facts;
    }

    void suspects(Box box) {
        heading(box, text.get("tag.suspects"));
        List<Suspect> suspects = scene.checkIn().suspects();
        if (suspects.isEmpty()) {
            String none = scene.checkIn().verdict() == null ? "tag.suspects.not-swept" : "tag.suspects.none";
            ink.paragraph(Weight.REGULAR, fontPt, LEAST_PT, box.below(headingMm()), text.get(none));
            return;
        }
        int shown = Math.min(SUSPECTS_SHOWN, suspects.size());
        Box rows = box.below(headingMm());
        double rowMm = Math.min(rows.height() / shown, 5 * Ink.lineMm(fontPt));
        for (int i = 0; i < shown; i++) {
            suspect(new Box(rows.x(), rows.y() + i * rowMm, rows.width(), rowMm - 0.15), suspects.get(i));
        }
    }

    private void suspect(Box row, Suspect suspect) {
        double percentMm = ink.fonts().widthMm(Weight.BOLD, fontPt, text.percent(1));
        double barMm = row.width() * 0.2;
        double baseline = row.y() + Ink.ascentMm(fontPt);
        String place = suspect.elementId() != null ? suspect.elementId() : suspect.positionCode();
        String name = text.word("likelihood", suspect.likelihood()) + ": " + text.word("fault", suspect.kind())
                + (place == null ? "" : ", " + place);
        ink.line(Weight.BOLD, fontPt, LEAST_PT, row.x(), baseline, row.width() - percentMm - barMm - 2.5, name);
        Box bar = new Box(row.right() - percentMm - 1 - barMm, baseline - 1.9, barMm, 1.9);
        ink.fill(new Box(bar.x(), bar.y(), bar.width() * suspect.probability(), bar.height()), 0.25);
        ink.frame(bar, Ink.FINE_MM);
        ink.textRight(Weight.BOLD, fontPt, row.right(), baseline, text.percent(suspect.probability()));
        Box words = row.below(Ink.lineMm(fontPt));
        String next = text.get("tag.suspect.next", text.reason(suspect.nextStep()));
        String seen = text.get("tag.suspect.seen", text.reason(suspect.evidence()));
        // The next step always; what looks the same and what speaks for it where there is room at full size.
        List<String> said = new ArrayList<>(List.of(next));
        int lines = lines(next, words);
        for (String more : alike(suspect, seen)) {
            int needed = lines(more, words);
            if ((lines + needed) * Ink.lineMm(fontPt) <= words.height()) {
                said.add(more);
                lines += needed;
            }
        }
        ink.paragraphs(Weight.REGULAR, fontPt, LEAST_PT, words, said);
    }

    private List<String> alike(Suspect suspect, String seen) {
        if (suspect.split() == null) {
            return List.of(seen);
        }
        String others = suspect.alike().stream().map(text::reason).collect(Collectors.joining(", "));
        return List.of(text.get("tag.suspect.alike", others, text.reason(suspect.split())), seen);
    }

    private int lines(String words, Box box) {
        return ink.fonts().wrap(Weight.REGULAR, fontPt, box.width(), words).size();
    }

    void events(Box box) {
        String position = scene.checkIn().faultPositionCode();
        heading(box, position == null ? text.get("tag.events.cabinet") : text.get("tag.events", position));
        List<HistoryEvent> events = scene.content().lastEvents();
        Box rows = box.below(headingMm());
        if (events.isEmpty()) {
            ink.paragraph(Weight.REGULAR, fontPt, LEAST_PT, rows, text.get("tag.events.none"));
            return;
        }
        List<String> lines = events.stream()
                .limit(EVENTS_SHOWN)
                .map(event -> text.date(event.at()) + " " + text.word("event", event.kind()) + ", " + event.by() + ": "
                        + text.reason(event.text()))
                .toList();
        ink.paragraphs(Weight.REGULAR, fontPt, LEAST_PT, rows, lines);
    }

    void cautions(Box box) {
        heading(box, text.get("tag.cautions") + ": " + text.get("caution.local-rules"));
        ink.paragraph(Weight.REGULAR, fontPt, LEAST_PT - 0.5, box.below(headingMm()), cautionText());
    }

    /** The same without a heading, for a low and wide box. */
    void cautionsInline(Box box) {
        String lead = text.get("tag.cautions") + ": " + text.get("caution.local-rules") + " ";
        ink.paragraph(Weight.SEMIBOLD, fontPt, LEAST_PT - 0.5, box, lead + cautionText());
    }

    private String cautionText() {
        String mark = "\u25b2\u00a0";
        return mark + String.join(" " + mark, cautionTexts());
    }

    private List<String> cautionTexts() {
        List<String> cautions = new ArrayList<>();
        if (scene.model().feed() == Feed.POWERED
                || scene.checkIn().visualDamage().contains(VisualItem.MAINS_INLET)) {
            cautions.add(text.get("caution.mains"));
        }
        if (scene.model().massKg() >= TWO_PEOPLE_KG) {
            cautions.add(text.get(
                    "caution.two-people", text.count(Math.round(scene.model().massKg()))));
        }
        cautions.add(text.get("caution.magnets"));
        cautions.add(text.get("caution.hearing"));
        cautions.add(text.get("caution.rigging"));
        if (scene.driverModelAtFault().filter(d -> d.kind() == DriverKind.CONE).isPresent()) {
            cautions.add(text.get("caution.air"));
        }
        return cautions;
    }

    /** A named line to write on. */
    void blank(Box box, String key) {
        ink.rule(box.x(), box.bottom(), box.right(), box.bottom(), Ink.FINE_MM);
        ink.line(
                Weight.REGULAR,
                Math.min(fontPt - 0.5, 6),
                4.5,
                box.x(),
                box.y() + Ink.ascentMm(5.5),
                box.width(),
                text.get(key));
    }

    void foot(double xMm, double baselineMm, double widthMm) {
        ink.line(Weight.REGULAR, 5.5, 4.5, xMm, baselineMm, widthMm, scene.foot());
    }
}
