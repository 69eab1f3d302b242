package org.docksweep.kiosk.bench;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.docksweep.contract.FindingBody;
import org.docksweep.contract.OrderedId;
import org.docksweep.fleet.ChargeClass;
import org.docksweep.fleet.ConfirmedCause;
import org.docksweep.fleet.Sighting;
import org.docksweep.kiosk.bench.BenchState.Choice;

/** A finding being written: choices by code or tap, a resistance or words by typing. Lives on the bench's thread. */
final class FindingDraft {
    final String positionCode;
    final String elementId;
    private ConfirmedCause cause;
    private ChargeClass charge = ChargeClass.UNKNOWN;
    private final Set<Sighting> seen = EnumSet.noneOf(Sighting.class);
    private Double coilResistanceOhm;
    private boolean coilOpen;
    private String words;

    FindingDraft(String positionCode, String elementId) {
        this.positionCode = positionCode;
        this.elementId = elementId;
    }

    List<Choice> choices() {
        List<Choice> choices = new ArrayList<>();
        for (ConfirmedCause value : ConfirmedCause.values()) {
            choices.add(new Choice("C" + (value.ordinal() + 1), value, value == cause));
        }
        for (Sighting value : Sighting.values()) {
            choices.add(new Choice("S" + (value.ordinal() + 1), value, seen.contains(value)));
        }
        for (ChargeClass value : ChargeClass.values()) {
            choices.add(new Choice("B" + (value.ordinal() + 1), value, value == charge));
        }
        return choices;
    }

    /** Takes the choice with a code; false when there is none. */
    boolean choose(String code) {
        Optional<Choice> choice =
                choices().stream().filter(c -> c.code().equalsIgnoreCase(code)).findFirst();
        if (choice.isEmpty()) {
            return false;
        }
        Enum<?> value = choice.get().value();
        if (value instanceof ConfirmedCause chosen) {
            cause = chosen;
        } else if (value instanceof ChargeClass chosen) {
            charge = chosen;
        } else if (value instanceof Sighting sighting && !seen.remove(sighting)) {
            seen.add(sighting);
            // Nothing seen and something seen exclude each other.
            seen.removeIf(s -> (s == Sighting.NOTHING) != (sighting == Sighting.NOTHING));
        }
        return true;
    }

    /** Takes typed text: a resistance in ohm, "open", or words. */
    void typed(String text) {
        String plain = text.strip();
        if (plain.equalsIgnoreCase("open")) {
            coilOpen = true;
            coilResistanceOhm = null;
        } else if (plain.matches("[0-9]{1,5}([.,][0-9]{1,4})?")) {
            coilResistanceOhm = Double.valueOf(plain.replace(',', '.'));
            coilOpen = false;
        } else {
            words = plain;
        }
    }

    /** What the coil measured, for the screen. */
    Optional<String> coil() {
        if (coilOpen) {
            return Optional.of("open");
        }
        return Optional.ofNullable(coilResistanceOhm).map(r -> r + " \u03a9");
    }

    Optional<String> words() {
        return Optional.ofNullable(words);
    }

    /** What is still missing, as a text key; empty when it can be kept. */
    Optional<String> missing() {
        if (cause == null) {
            return Optional.of("bench-finding-needs-cause");
        }
        if (cause == ConfirmedCause.OTHER && words == null) {
            return Optional.of("bench-finding-needs-words");
        }
        return Optional.empty();
    }

    FindingBody body(Instant at, String by, String bench) {
        return new FindingBody(
                OrderedId.next(),
                at,
                by,
                bench,
                positionCode,
                elementId,
                coilResistanceOhm,
                null,
                coilOpen,
                Set.copyOf(seen),
                cause,
                words,
                charge);
    }
}
