package org.docksweep.kiosk.people;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Predicate;
import org.docksweep.contract.Person;
import org.docksweep.contract.SignOn;
import org.docksweep.kiosk.service.ServiceClient;
import org.docksweep.kiosk.service.ServiceProblem;
import org.docksweep.kiosk.service.ServiceUnreachable;

/** A kiosk's sign-on with a house of two people, a service that can be away, and clocks that stand until they are set. */
final class SignOnBench implements AutoCloseable {
    static final String INES = "B-0042";
    static final String TOMA = "B-0077";
    static final String INES_PIN = "580317";
    static final String TOMA_PIN = "662904";
    private static final long PATIENCE_S = 20;

    /** Nothing listens there. */
    private static final ServiceClient NOWHERE = new ServiceClient(URI.create("http://127.0.0.1:9"), "a-token");

    final Map<String, String> pins = new ConcurrentHashMap<>(Map.of(INES, INES_PIN, TOMA, TOMA_PIN));
    final List<String> handedOver = new CopyOnWriteArrayList<>();
    final List<String> askedAtService = new CopyOnWriteArrayList<>();
    volatile boolean away;
    volatile ServiceProblem refuses;
    volatile boolean working;
    volatile Instant now = Instant.parse("2026-05-02T01:30:00Z");
    volatile long ticksNs;
    private final Path folder;
    private final SignOnParts.Settings settings;
    SignOnDesk desk;

    SignOnBench(Path folder) throws IOException {
        this(folder, new SignOnParts.Settings(Duration.ofMinutes(10), "B-"));
    }

    SignOnBench(Path folder, SignOnParts.Settings settings) throws IOException {
        this.folder = folder;
        this.settings = settings;
        start();
    }

    final void start() throws IOException {
        Clock clock = new Clock() {
            @Override
            public Instant instant() {
                return now;
            }

            @Override
            public ZoneId getZone() {
                return ZoneOffset.UTC;
            }

            @Override
            public Clock withZone(ZoneId zone) {
                return this;
            }
        };
        desk = new SignOnDesk(new SignOnParts(
                this::signOn,
                PersonBook.open(file(), Duration.ofDays(7), clock),
                clock,
                () -> ticksNs,
                () -> working,
                handedOver::add,
                "kiosk-01",
                settings));
    }

    Path file() {
        return folder.resolve("people.json");
    }

    private SignOn signOn(String badge, String pin) throws ServiceProblem, ServiceUnreachable {
        askedAtService.add(badge);
        if (away) {
            return NOWHERE.post("/", "", SignOn.class);
        }
        if (refuses != null) {
            throw refuses;
        }
        if (!pin.equals(pins.get(badge))) {
            throw Problems.wrongBadgeOrPin();
        }
        return new SignOn(nameOf(badge), Person.Role.DOCK, "kiosk-01", "a-token", now.plus(Duration.ofHours(12)));
    }

    static String nameOf(String badge) {
        return badge.equals(INES) ? "Ines Falk" : "Toma Reyl";
    }

    void restart() throws IOException {
        desk.close();
        start();
    }

    void pass(Duration time) {
        now = now.plus(time);
        ticksNs += time.toNanos();
    }

    /** Enters texts one after the other as the window does: whoever types has touched the kiosk. */
    SignOnState enter(String... texts) throws InterruptedException {
        for (String text : texts) {
            desk.touched();
            desk.typed(text);
        }
        return settled();
    }

    /** The state after everything that was asked of the desk until now. */
    SignOnState settled() throws InterruptedException {
        desk.awaitIdle();
        return desk.state();
    }

    SignOnState await(String what, Predicate<SignOnState> wanted) throws InterruptedException {
        long end = System.nanoTime() + Duration.ofSeconds(PATIENCE_S).toNanos();
        while (!wanted.test(settled())) {
            if (System.nanoTime() > end) {
                throw new AssertionError("never saw " + what + "; the desk shows " + desk.state());
            }
        }
        return desk.state();
    }

    static String message(SignOnState state) {
        return state.message().map(m -> m.text().key()).orElse("");
    }

    List<String> handedOver() {
        return new ArrayList<>(handedOver);
    }

    @Override
    public void close() {
        desk.close();
    }
}
