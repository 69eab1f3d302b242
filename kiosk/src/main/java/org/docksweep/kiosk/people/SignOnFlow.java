package org.docksweep.kiosk.people;

import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.contract.SignOn;
import org.docksweep.fleet.Gs1Key;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TagReading;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.people.SignOnState.Message;
import org.docksweep.kiosk.people.SignOnState.Stage;
import org.docksweep.kiosk.service.ServiceProblem;
import org.docksweep.kiosk.service.ServiceUnreachable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The state machine of signing on. A PIN is asked when the badge alone is not enough: the first time, when the sign-on has run out, after
 * signing off, and for whoever comes by name. Lives on the desk's thread only, but for {@link #isBadge}.
 */
final class SignOnFlow {
    private static final Logger LOG = LoggerFactory.getLogger(SignOnFlow.class);

    /** What the service takes for a badge. */
    private static final Pattern BADGE = Pattern.compile("[A-Za-z0-9_-]{4,64}");

    private static final Pattern PIN = Pattern.compile("[0-9]{6,12}");

    /** As long as a sign-on at the service lasts by default: a shift. */
    private static final Duration SHIFT = Duration.ofHours(12);

    private static final int MOST_HELD = 50;

    private final SignOnParts parts;
    private final Runnable publish;
    private final List<String> held = new ArrayList<>();
    private Stage stage = Stage.WHO;
    private boolean locked = true;
    private String person;
    private String personsBadge;
    private String asked;
    private Message message;
    private boolean busy;

    SignOnFlow(SignOnParts parts, Runnable publish) {
        this.parts = parts;
        this.publish = publish;
    }

    boolean isBadge(String text) {
        String plain = text.strip();
        String prefix = parts.settings().badgePrefix();
        boolean marked = !prefix.isEmpty() && plain.regionMatches(true, 0, prefix, 0, prefix.length());
        return BADGE.matcher(plain).matches() && (marked || parts.book().knows(plain));
    }

    void typed(String text) {
        String plain = text.strip();
        message = null;
        if (stage == Stage.PIN && PIN.matcher(plain).matches() && !parts.book().knows(plain)) {
            tryPin(plain);
        } else if (isBadge(plain)) {
            badge(plain);
        } else if (isWork(text)) {
            hold(plain);
        } else if (stage == Stage.PIN) {
            tell(ReadingState.WATCH, Reason.of("people-not-a-pin"));
        } else {
            typedName(plain);
        }
    }

    /** A cabinet or a job, scanned at the wrong moment. */
    private static boolean isWork(String text) {
        return !(TagReading.read(text) instanceof TagReading.None)
                || Gs1Key.looksLike(text)
                || JobCode.looksLike(text.strip());
    }

    private void hold(String text) {
        if (stage == Stage.WORK) {
            // The pages came back while this was on its way.
            parts.later().accept(text);
            return;
        }
        if (held.contains(text)) {
            tell(ReadingState.WATCH, Reason.of("people-held-already", text));
        } else if (held.size() < MOST_HELD) {
            held.add(text);
            tell(ReadingState.WATCH, Reason.of("people-held", text));
        } else {
            tell(ReadingState.FAULT, Reason.of("people-held-full", text));
        }
    }

    private void typedName(String text) {
        Optional<KnownPerson> byName = parts.book().all().stream()
                .filter(p -> p.name().equalsIgnoreCase(text))
                .findFirst();
        if (byName.isPresent()) {
            askPin(byName.get().badge());
        } else if (BADGE.matcher(text).matches()) {
            askPin(text);
        } else {
            tell(ReadingState.WATCH, Reason.of("people-nobody", printable(text)));
        }
    }

    private static String printable(String text) {
        String clean = text.replaceAll("\\p{Cntrl}", "?");
        return clean.length() <= 40 ? clean : clean.substring(0, 39) + "\u2026";
    }

    private void badge(String badge) {
        Optional<KnownPerson> known = parts.book().find(badge);
        if (known.isPresent() && known.get().isSignedOn(parts.clock().instant())) {
            takeOver(known.get().name(), badge);
        } else {
            askPin(badge);
        }
    }

    private void askPin(String badge) {
        asked = badge;
        stage = Stage.PIN;
    }

    void choose(int index) {
        List<KnownPerson> all = parts.book().all();
        if (stage == Stage.WHO && index >= 0 && index < all.size()) {
            message = null;
            askPin(all.get(index).badge());
        }
    }

    private void tryPin(String pin) {
        String badge = asked;
        busy = true;
        publish.run();
        try {
            SignOn signedOn = parts.office().signOn(badge, pin);
            SignOnDesk.onDisk(() -> parts.book().vouched(badge, signedOn.name(), pin, signedOn.endsAt()));
            LOG.info("{} signed on, as the service says", signedOn.name());
            takeOver(signedOn.name(), badge);
        } catch (ServiceProblem e) {
            refused(e, badge, pin);
        } catch (ServiceUnreachable e) {
            LOG.info("Signing on without the service: {}", e.getMessage());
            withoutService(badge, pin);
        } finally {
            busy = false;
        }
    }

    private void refused(ServiceProblem e, String badge, String pin) {
        LOG.info("A sign-on was refused: {}", e.getMessage());
        if (e.type().equals(ProblemTypes.WRONG_BADGE_OR_PIN)) {
            SignOnDesk.onDisk(() -> parts.book().refused(badge, pin));
            tell(ReadingState.FAULT, Reason.of("people-wrong"));
        } else if (e.type().equals(ProblemTypes.TOO_MANY_TRIES)) {
            tell(ReadingState.FAULT, Reason.of("people-too-many"));
        } else if (e.status() == 401 || e.status() == 403) {
            tell(ReadingState.FAULT, Reason.of("people-kiosk-token"));
        } else if (e.status() >= 500) {
            withoutService(badge, pin);
        } else {
            tell(ReadingState.FAULT, Reason.of("people-refused", e.getMessage()));
        }
    }

    private void withoutService(String badge, String pin) {
        PersonBook.Check[] how = new PersonBook.Check[1];
        SignOnDesk.onDisk(() -> how[0] = parts.book().check(badge, pin, SHIFT));
        switch (how[0]) {
            case RIGHT -> {
                String name = parts.book().find(badge).orElseThrow().name();
                LOG.info("{} signed on, as known here", name);
                takeOver(name, badge);
            }
            case WRONG -> tell(ReadingState.FAULT, Reason.of("people-wrong"));
            case WAIT -> tell(ReadingState.FAULT, Reason.of("people-wait", waitSeconds(badge)));
            case UNKNOWN -> tell(ReadingState.FAULT, Reason.of("people-not-known-here"));
        }
    }

    private String waitSeconds(String badge) {
        Instant now = parts.clock().instant();
        Duration wait = parts.book().find(badge).map(p -> p.waits(now)).orElse(Duration.ZERO);
        return Long.toString(wait.toSeconds() + 1);
    }

    /** The next person simply takes over: whatever is at hand stays, and is recorded for whoever is on when it is recorded. */
    private void takeOver(String name, String badge) {
        person = name;
        personsBadge = badge;
        asked = null;
        stage = Stage.WORK;
        locked = false;
        message = null;
        List<String> waiting = List.copyOf(held);
        held.clear();
        busy = false;
        publish.run();
        waiting.forEach(parts.later());
    }

    void ask() {
        if (stage == Stage.WORK) {
            message = null;
            stage = Stage.WHO;
        }
    }

    void lock() {
        message = null;
        asked = null;
        stage = Stage.WHO;
        locked = true;
    }

    void leftAlone() {
        if (locked && stage == Stage.WHO) {
            return;
        }
        boolean wasOpen = !locked;
        lock();
        if (wasOpen) {
            tell(
                    ReadingState.NOT_JUDGED,
                    Reason.of(
                            "people-left-alone",
                            Long.toString(parts.settings().lockAfter().toMinutes())));
        }
    }

    void signOff() {
        lock();
        if (personsBadge != null) {
            String badge = personsBadge;
            SignOnDesk.onDisk(() -> parts.book().signedOff(badge));
            tell(ReadingState.NOT_JUDGED, Reason.of("people-signed-off", person));
        }
    }

    void back() {
        message = null;
        if (stage == Stage.PIN) {
            asked = null;
            stage = Stage.WHO;
        } else if (!locked) {
            toWork();
        }
    }

    private void toWork() {
        stage = Stage.WORK;
        List<String> waiting = List.copyOf(held);
        held.clear();
        publish.run();
        waiting.forEach(parts.later());
    }

    void cannotKeep(IOException e) {
        busy = false;
        tell(ReadingState.FAULT, Reason.of("people-cannot-keep", String.valueOf(e.getMessage())));
    }

    void defect(RuntimeException e) {
        busy = false;
        tell(ReadingState.FAULT, Reason.of("people-defect", e.getMessage() == null ? e.toString() : e.getMessage()));
    }

    private void tell(ReadingState state, Reason text) {
        message = new Message(state, text);
    }

    SignOnState state() {
        List<String> names = parts.book().all().stream().map(KnownPerson::name).toList();
        return new SignOnState(
                stage,
                Optional.ofNullable(person),
                locked,
                Optional.ofNullable(asked)
                        .map(badge ->
                                parts.book().find(badge).map(KnownPerson::name).orElse(badge)),
                names,
                held,
                Optional.ofNullable(message),
                busy);
    }
}
