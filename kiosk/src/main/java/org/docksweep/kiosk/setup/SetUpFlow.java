package org.docksweep.kiosk.setup;

import java.io.IOException;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.fleet.Reason;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.people.SignOnParts;
import org.docksweep.kiosk.rig.audio.AudioDevices;
import org.docksweep.kiosk.settings.KioskSettings;
import org.docksweep.kiosk.setup.SetUpParts.End;
import org.docksweep.kiosk.setup.SetUpParts.Printer;
import org.docksweep.kiosk.setup.SetUpState.Line;
import org.docksweep.kiosk.setup.SetUpState.Step;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The state machine of the set-up walk. Lives on the desk's thread only. */
final class SetUpFlow {
    private static final Logger LOG = LoggerFactory.getLogger(SetUpFlow.class);

    /** What a set-up by this walk measures with; the virtual rig is for practice. */
    private static final String RIG = "audio";

    /** Languages the window speaks, each by its own name. */
    private static final List<String> LANGUAGES = List.of("en", "de");

    private static final List<String> LANGUAGE_NAMES = List.of("English", "Deutsch");

    /** Queues that have a key, beside the one for no printer. */
    private static final int MOST_PRINTERS = 5;

    private final SetUpParts parts;
    private final Runnable publish;
    private Step step = Step.HELLO;
    private String language;
    private URI service;
    private String token;
    private KioskSnapshot house;
    private int number;
    private boolean deviceFound;
    private String printer;
    private List<Line> found = List.of();
    private List<Printer> printers = List.of();
    private Line message;
    private boolean busy;

    SetUpFlow(SetUpParts parts, Runnable publish) {
        this.parts = parts;
        this.publish = publish;
        language = parts.before().map(KioskSettings::language).orElse(parts.language());
    }

    /** Work that finds out something about the service. */
    private interface Check {
        void run() throws ServiceCheck.Wrong;
    }

    /** Something slow: the page shows that it goes on. */
    private void checked(Check check) {
        busy = true;
        message = null;
        publish.run();
        try {
            check.run();
        } catch (ServiceCheck.Wrong e) {
            tell(ReadingState.FAULT, e.reason());
        } finally {
            busy = false;
        }
    }

    private void tell(ReadingState state, Reason text) {
        message = new Line(state, text);
    }

    void typed(String text) {
        message = null;
        switch (step) {
            case SERVICE ->
                checked(() -> {
                    URI address = ServiceCheck.address(text);
                    ServiceCheck.reach(address);
                    if (!address.equals(service)) {
                        // Another service knows nothing of a token typed for the one before.
                        token = null;
                    }
                    service = address;
                    step = Step.TOKEN;
                });
            case TOKEN -> tryToken(text.strip());
            case NUMBER -> numbered(text.strip());
            default -> tell(ReadingState.WATCH, Reason.of("setup-use-keys"));
        }
    }

    private void tryToken(String typed) {
        checked(() -> {
            house = ServiceCheck.token(service, typed);
            token = typed;
            step = Step.NUMBER;
        });
    }

    private void numbered(String text) {
        if (!text.matches("[0-9]{1,2}") || Integer.parseInt(text) < 1) {
            tell(ReadingState.FAULT, Reason.of("setup-number-wrong"));
            return;
        }
        number = Integer.parseInt(text);
        step = Step.RIG;
        look();
    }

    /** Looks for what this step needs. */
    void look() {
        if (step == Step.RIG) {
            checked(this::lookForDevices);
        } else if (step == Step.PRINTER) {
            checked(this::lookForPrinters);
        }
    }

    private void lookForDevices() {
        List<Line> lines = new ArrayList<>();
        deviceFound = false;
        for (AudioDevices.Device device : parts.devices().get()) {
            boolean usable = device.capturesForRig();
            deviceFound |= usable;
            lines.add(new Line(
                    usable ? ReadingState.OK : ReadingState.NOT_JUDGED,
                    Reason.of(usable ? "setup-device" : "setup-device-other", device.name())));
        }
        if (!deviceFound) {
            lines.add(0, new Line(ReadingState.WATCH, Reason.of("setup-no-device")));
        }
        found = lines;
    }

    private void lookForPrinters() {
        printers = parts.printers().get().stream().limit(MOST_PRINTERS).toList();
        List<Line> lines = new ArrayList<>();
        for (Printer p : printers) {
            lines.add(new Line(
                    p.accepting() ? ReadingState.OK : ReadingState.WATCH,
                    Reason.of(p.accepting() ? "setup-printer" : "setup-printer-not-accepting", p.name())));
        }
        if (printers.isEmpty()) {
            lines.add(new Line(
                    ReadingState.WATCH,
                    Reason.of("setup-no-printer", parts.papers().toString())));
        }
        found = lines;
    }

    void choose(int index) {
        message = null;
        if (step == Step.HELLO && index >= 0 && index < LANGUAGES.size()) {
            language = LANGUAGES.get(index);
        } else if (step == Step.PRINTER && index >= 0 && index < printers.size()) {
            printer = printers.get(index).name();
            toStore();
        }
    }

    private void toStore() {
        found = List.of();
        step = Step.STORE;
    }

    void next() {
        message = null;
        switch (step) {
            case HELLO -> {
                service = parts.before().map(KioskSettings::service).orElse(null);
                token = parts.before().map(KioskSettings::token).orElse(null);
                number = parts.before().map(KioskSettings::number).orElse(1);
                step = Step.SERVICE;
            }
            case TOKEN -> {
                if (token != null) {
                    tryToken(token);
                }
            }
            case RIG -> {
                step = Step.PRINTER;
                look();
            }
            case PRINTER -> {
                printer = null;
                toStore();
            }
            case STORE -> store();
            case SERVICE, NUMBER -> tell(ReadingState.WATCH, Reason.of("setup-type-and-enter"));
        }
    }

    private void store() {
        Optional<KioskSettings> before = parts.before();
        KioskSettings settings = new KioskSettings(
                service,
                token,
                number,
                RIG,
                before.filter(b -> b.rig().equals(RIG))
                        .map(KioskSettings::rigSettings)
                        .orElse(Map.of()),
                printer,
                before.map(KioskSettings::tones).orElse(null),
                before.map(KioskSettings::theme).orElse("DARK"),
                before.map(KioskSettings::scale).orElse(1.0),
                language,
                before.map(KioskSettings::lockAfterMinutes)
                        .orElse((double) SignOnParts.Settings.USUAL_LOCK_AFTER.toMinutes()),
                before.map(KioskSettings::badgePrefix).orElse(SignOnParts.Settings.USUAL_BADGE_PREFIX),
                before.map(KioskSettings::pinCountsDays).orElse(KioskSettings.USUAL_PIN_COUNTS_DAYS));
        try {
            parts.file().write(settings);
            LOG.info("The kiosk was set up: {}", settings);
            parts.ended().accept(End.STORED);
        } catch (IOException e) {
            LOG.warn("The settings cannot be stored", e);
            tell(
                    ReadingState.FAULT,
                    Reason.of("setup-cannot-store", parts.file().path().toString(), String.valueOf(e.getMessage())));
        }
    }

    void back() {
        message = null;
        found = List.of();
        if (step != Step.HELLO) {
            step = Step.values()[step.ordinal() - 1];
            look();
        }
    }

    void defect(RuntimeException e) {
        busy = false;
        tell(ReadingState.FAULT, Reason.of("setup-defect", e.getMessage() == null ? e.toString() : e.getMessage()));
    }

    SetUpState state() {
        return new SetUpState(
                step,
                language,
                done(),
                found,
                choices(),
                suggestion(),
                Optional.ofNullable(message),
                step == Step.TOKEN ? token != null : parts.before().isPresent(),
                parts.before().isPresent(),
                busy);
    }

    private List<String> choices() {
        return switch (step) {
            case HELLO -> LANGUAGE_NAMES;
            case PRINTER -> printers.stream().map(Printer::name).toList();
            default -> List.of();
        };
    }

    private String suggestion() {
        return switch (step) {
            case SERVICE -> service == null ? "" : service.toString();
            case NUMBER -> Integer.toString(number);
            default -> "";
        };
    }

    private List<Line> done() {
        List<Line> lines = new ArrayList<>();
        if (step.compareTo(Step.SERVICE) > 0) {
            lines.add(fine("setup-done-service", service.toString()));
        }
        if (step.compareTo(Step.TOKEN) > 0) {
            lines.add(fine(
                    "setup-done-token",
                    house.siteName(),
                    Integer.toString(house.cabinets().size())));
        }
        if (step.compareTo(Step.NUMBER) > 0) {
            lines.add(fine("setup-done-number", Integer.toString(number)));
        }
        if (step.compareTo(Step.RIG) > 0) {
            lines.add(
                    deviceFound
                            ? fine("setup-done-rig")
                            : new Line(ReadingState.WATCH, Reason.of("setup-done-rig-later")));
        }
        if (step.compareTo(Step.PRINTER) > 0) {
            lines.add(
                    printer == null
                            ? fine("setup-done-folder", parts.papers().toString())
                            : fine("setup-done-printer", printer));
        }
        return lines;
    }

    private static Line fine(String key, String... arguments) {
        return new Line(ReadingState.OK, Reason.of(key, arguments));
    }
}
