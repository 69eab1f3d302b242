package org.docksweep.kiosk.screens;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.docksweep.fleet.Reason;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.people.SignOnState;
import org.docksweep.kiosk.people.SignOnState.Message;
import org.docksweep.kiosk.people.SignOnState.Stage;

/** States of signing on as a window can meet them. */
final class SampleSignOn {
    private static final String INES = "Ines Falk";
    private static final List<String> KNOWN = List.of(INES, "Jorunn Aas-Lindqvist", "Toma Reyl");

    private SampleSignOn() {}

    static Map<String, SignOnState> all() {
        Map<String, SignOnState> all = new LinkedHashMap<>();
        all.put("first", state(Stage.WHO, null, true, null, List.of(), List.of(), null, false));
        all.put(
                "locked",
                state(
                        Stage.WHO,
                        INES,
                        true,
                        null,
                        KNOWN,
                        List.of("MCH-000117", "MCH-000118"),
                        new Message(ReadingState.WATCH, Reason.of("people-held", "MCH-000118")),
                        false));
        all.put(
                "left-alone",
                state(
                        Stage.WHO,
                        INES,
                        true,
                        null,
                        KNOWN,
                        List.of(),
                        new Message(ReadingState.NOT_JUDGED, Reason.of("people-left-alone", "10")),
                        false));
        all.put("who", state(Stage.WHO, INES, false, null, KNOWN, List.of(), null, false));
        all.put("pin", state(Stage.PIN, INES, true, "Toma Reyl", KNOWN, List.of(), null, false));
        all.put(
                "pin-offline",
                state(
                        Stage.PIN,
                        null,
                        true,
                        "B-0042",
                        List.of(),
                        List.of(),
                        new Message(ReadingState.FAULT, Reason.of("people-not-known-here")),
                        false));
        all.put("asking", state(Stage.PIN, INES, true, "Toma Reyl", KNOWN, List.of(), null, true));
        all.put(
                "many",
                state(
                        Stage.WHO,
                        INES,
                        true,
                        null,
                        IntStream.range(0, 9)
                                .mapToObj(i -> "Person Number " + i)
                                .toList(),
                        IntStream.range(0, 50)
                                .mapToObj(i -> "MCH-0001" + (10 + i))
                                .toList(),
                        new Message(ReadingState.FAULT, Reason.of("people-held-full", "MCH-000199")),
                        false));
        return all;
    }

    static SignOnState working(String name) {
        return state(Stage.WORK, name, false, null, KNOWN, List.of(), null, false);
    }

    private static SignOnState state(
            Stage stage,
            String person,
            boolean locked,
            String asked,
            List<String> known,
            List<String> held,
            Message message,
            boolean busy) {
        return new SignOnState(
                stage,
                Optional.ofNullable(person),
                locked,
                Optional.ofNullable(asked),
                known,
                held,
                Optional.ofNullable(message),
                busy);
    }
}
