package org.docksweep.kiosk.people;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.docksweep.fleet.Require;
import org.docksweep.kiosk.settings.OwnerFile;
import org.docksweep.kiosk.spool.Wire;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.security.crypto.password.DelegatingPasswordEncoder;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.security.crypto.password.Pbkdf2PasswordEncoder;
import tools.jackson.core.JacksonException;

/**
 * The people this kiosk can sign on without the service, in a file that only its owner can read. Of a PIN it holds a slow hash
 * (PBKDF2 with HMAC-SHA-256, 310,000 rounds, a salt of 16 bytes: {@link Pbkdf2PasswordEncoder#defaultsForSpringSecurity_v5_8()}), and
 * that only for a while. A PIN has few digits: whoever has the file and days of computing can find it, hence the owner's rights and
 * the end. Lives on one thread, but for {@link #knows}.
 */
public final class PersonBook {
    private static final Logger LOG = LoggerFactory.getLogger(PersonBook.class);

    private static final String METHOD = "pbkdf2-v5-8";

    private final Path file;
    private final Duration keeps;
    private final Clock clock;
    private final PasswordEncoder pins = new DelegatingPasswordEncoder(
            METHOD, Map.of(METHOD, Pbkdf2PasswordEncoder.defaultsForSpringSecurity_v5_8()));
    private volatile Map<String, KnownPerson> people = Map.of();

    /** The file. */
    private record Content(List<KnownPerson> people) {}

    /** How a try without the service ended. */
    enum Check {
        /** Badge and PIN are right. */
        RIGHT,
        WRONG,
        /** Nobody of this badge can be checked here: never signed on here, too long ago, or too many wrong tries. */
        UNKNOWN,
        /** No PIN is tried now. */
        WAIT
    }

    private PersonBook(Path file, Duration keeps, Clock clock) {
        this.file = file;
        this.keeps = keeps;
        this.clock = clock;
    }

    /**
     * Opens a book. A file that cannot be understood is put aside, since then the service can still vouch for everybody.
     *
     * @param file the file, which need not exist
     * @param keeps how long a PIN counts here after the service accepted it
     * @param clock time
     * @return the book
     * @throws IOException if the disk refuses
     */
    public static PersonBook open(Path file, Duration keeps, Clock clock) throws IOException {
        Require.positive("days a PIN counts without the service", keeps.toSeconds());
        PersonBook book = new PersonBook(file, keeps, clock);
        if (Files.exists(file)) {
            book.read();
        }
        return book;
    }

    private void read() throws IOException {
        try {
            Map<String, KnownPerson> read = new LinkedHashMap<>();
            for (KnownPerson person : Wire.json()
                    .readValue(Files.readAllBytes(file), Content.class)
                    .people()) {
                // Who can no longer be checked is forgotten.
                if (clock.instant().isBefore(person.expiresAt())) {
                    read.put(person.badge(), person);
                }
            }
            people = Map.copyOf(read);
        } catch (JacksonException | NullPointerException e) {
            Path aside = file.resolveSibling(file.getFileName() + ".damaged");
            Files.move(file, aside, StandardCopyOption.REPLACE_EXISTING);
            LOG.warn(
                    "{} cannot be understood and was put aside as {}; everybody signs on with the service once",
                    file,
                    aside.getFileName());
        }
    }

    /** Whether this is the badge of somebody who signed on here. May be asked from any thread. */
    boolean knows(String badge) {
        return people.containsKey(badge);
    }

    Optional<KnownPerson> find(String badge) {
        return Optional.ofNullable(people.get(badge));
    }

    /** Everybody who can sign on here without a badge at hand, by name. */
    List<KnownPerson> all() {
        return people.values().stream()
                .sorted(java.util.Comparator.comparing(KnownPerson::name))
                .toList();
    }

    /** The service accepted badge and PIN. */
    void vouched(String badge, String name, String pin, Instant signedOnUntil) throws IOException {
        Instant now = clock.instant();
        put(new KnownPerson(badge, name, pins.encode(pin), now, now.plus(keeps), signedOnUntil, 0, null));
    }

    /** Checks badge and PIN by what is known here, and counts. */
    Check check(String badge, String pin, Duration signedOnFor) throws IOException {
        Instant now = clock.instant();
        KnownPerson person = people.get(badge);
        if (person == null || !person.countsWithoutService(now)) {
            return Check.UNKNOWN;
        }
        if (!person.waits(now).isZero()) {
            return Check.WAIT;
        }
        if (!pins.matches(pin, person.verifier())) {
            put(person.wrongPin(now));
            return Check.WRONG;
        }
        put(person.signedOn(earlier(person.expiresAt(), now.plus(signedOnFor))));
        return Check.RIGHT;
    }

    private static Instant earlier(Instant a, Instant b) {
        return a.isBefore(b) ? a : b;
    }

    /** The service refused badge and PIN. When they were right here, the PIN was changed or the person has left. */
    void refused(String badge, String pin) throws IOException {
        KnownPerson person = people.get(badge);
        if (person != null && pins.matches(pin, person.verifier())) {
            Map<String, KnownPerson> rest = new LinkedHashMap<>(people);
            rest.remove(badge);
            write(rest);
        }
    }

    /** The badge alone is no longer enough. */
    void signedOff(String badge) throws IOException {
        KnownPerson person = people.get(badge);
        if (person != null) {
            put(person.signedOff(clock.instant()));
        }
    }

    private void put(KnownPerson person) throws IOException {
        Map<String, KnownPerson> next = new LinkedHashMap<>(people);
        next.put(person.badge(), person);
        write(next);
    }

    private void write(Map<String, KnownPerson> next) throws IOException {
        OwnerFile.write(
                file,
                Wire.json()
                        .writerWithDefaultPrettyPrinter()
                        .writeValueAsBytes(new Content(List.copyOf(next.values()))));
        people = Map.copyOf(next);
    }
}
