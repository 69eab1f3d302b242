package org.docksweep.kiosk.screens;

import java.util.List;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import org.docksweep.contract.BenchJobBody;
import org.docksweep.kiosk.bench.BenchState;
import org.docksweep.kiosk.bench.BenchState.Activity;

/** Right quarter of the bench page: where the job stands, what is known, and the keys that are alive. */
final class BenchColumn extends JPanel {
    private static final long serialVersionUID = 1;

    private final VerdictPlate plate;
    private final BenchNotes notes;
    private final KeyPad keys;

    BenchColumn(Sizes sizes, Texts texts) {
        super(new MigLayout(
                "insets 0, gap 0, fill, hidemode 3", "[grow,fill]", "[" + sizes.px(104) + "px!][grow,fill][]"));
        setOpaque(false);
        plate = new VerdictPlate(sizes, texts);
        notes = new BenchNotes(sizes, texts);
        keys = new KeyPad(sizes);
        add(plate, "wrap, grow");
        add(notes, "wrap, grow, hmin 0, gaptop " + sizes.px(8) + "px");
        add(keys, "grow, gaptop " + sizes.px(8) + "px");
    }

    void show(BenchState state, List<Offer> offers) {
        plate.show(guide(state));
        notes.show(state);
        keys.show(offers);
    }

    private static Guide guide(BenchState state) {
        if (state.sweepShare().isPresent()) {
            return new Guide(Tone.NEUTRAL, Sign.WAVE, "word.SWEEP", List.of());
        }
        if (state.activity() == Activity.QUEUE) {
            return new Guide(Tone.NEUTRAL, Sign.CODE, "bench.word.QUEUE", List.of());
        }
        if (state.activity() == Activity.FINDING) {
            return new Guide(Tone.ACT, Sign.EYE, "bench.word.FINDING", List.of());
        }
        if (state.activity() == Activity.PART) {
            boolean fits = state.part().orElseThrow().fit().fits();
            return fits
                    ? new Guide(Tone.ACT, Sign.LABEL, "bench.word.PART", List.of())
                    : new Guide(Tone.FAULT, Sign.CROSS, "bench.word.NO_FIT", List.of());
        }
        BenchJobBody.State stands = state.job().orElseThrow().file().job().state();
        boolean proved = state.job().orElseThrow().file().proof().proved();
        return switch (stands) {
            case WAITING -> new Guide(Tone.NEUTRAL, Sign.CODE, "bench.word.WAITING", List.of());
            case ACCEPTED -> new Guide(Tone.ACT, Sign.HAND, "bench.word.ACCEPTED", List.of());
            case WAITING_FOR_PART -> new Guide(Tone.ATTENTION, Sign.HAND, "bench.word.WAITING_FOR_PART", List.of());
            case IN_REPAIR -> new Guide(Tone.ACT, Sign.ARROW, "bench.word.IN_REPAIR", List.of());
            case PROVING ->
                proved
                        ? new Guide(Tone.PASS, Sign.TICK, "bench.word.PROVED", List.of())
                        : new Guide(Tone.ACT, Sign.WAVE, "bench.word.PROVING", List.of());
            case SIGNED_OFF -> new Guide(Tone.PASS, Sign.TICK, "bench.word.SIGNED_OFF", List.of());
            case SCRAPPED -> new Guide(Tone.NEUTRAL, Sign.CROSS, "bench.word.SCRAPPED", List.of());
            case RETURNED_UNREPAIRED ->
                new Guide(Tone.ATTENTION, Sign.HAND, "bench.word.RETURNED_UNREPAIRED", List.of());
        };
    }
}
