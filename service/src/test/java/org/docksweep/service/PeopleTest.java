package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import javax.sql.DataSource;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.AuditEntry;
import org.docksweep.contract.KioskToken;
import org.docksweep.contract.Page;
import org.docksweep.contract.Person;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.contract.SignOn;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.core.type.TypeReference;

@ExtendWith(RunningService.class)
class PeopleTest {
    private final Api api;

    PeopleTest(Api api) {
        this.api = api;
    }

    private List<AuditEntry> audit() {
        List<AuditEntry> all = new ArrayList<>();
        String after = "0";
        while (after != null) {
            Page<AuditEntry> page =
                    api.get(ApiPaths.AUDIT + "?limit=1000&after=" + after).as(new TypeReference<Page<AuditEntry>>() {});
            all.addAll(page.items());
            after = page.next();
        }
        return all;
    }

    @Test
    void signsAPersonOnAtAKioskAndAttributesWhatIsWrittenToBoth() {
        KioskToken token = Staff.token(api, KioskToken.Role.DOCK);
        Person person = Staff.hire(api, Person.Role.DOCK);
        SignOn signOn = Staff.signOn(api.as(token.token()), person, Staff.PIN).as(SignOn.class);
        assertThat(signOn.name()).isEqualTo(person.name());
        assertThat(signOn.kiosk()).isEqualTo(token.name());
        Api signedOn = api.as(signOn.token());

        String model = House.newModel(api);
        AssetTag tag = House.newTag();
        Api.Answer answer = signedOn.send(signedOn.request(
                        ApiPaths.CABINETS + "/" + tag, "Content-Type", "application/json", "X-Request-Id", "dock-1.77")
                .PUT(java.net.http.HttpRequest.BodyPublishers.ofByteArray(
                        Api.MAPPER.writeValueAsBytes(House.cabinet(tag, model, CabinetStatus.OUT)))));

        assertThat(answer.status()).as("%s", answer).isEqualTo(201);
        assertThat(answer.header("X-Request-Id")).isEqualTo("dock-1.77");
        assertThat(audit())
                .filteredOn(e -> e.target().endsWith(tag.value()))
                .singleElement()
                .satisfies(e -> {
                    assertThat(e.doneBy()).isEqualTo(person.name());
                    assertThat(e.personId()).isEqualTo(person.id());
                    assertThat(e.kiosk()).isEqualTo(token.name());
                    assertThat(e.action()).isEqualTo("PUT");
                    assertThat(e.outcome()).isEqualTo(AuditEntry.Outcome.STORED);
                    assertThat(e.requestId()).isEqualTo("dock-1.77");
                });
        assertThat(audit())
                .filteredOn(e -> person.id().equals(e.personId()) && e.target().equals(ApiPaths.SIGN_ONS))
                .hasSize(1);
    }

    @Test
    void endsASignOnWhenAskedWhenTheKioskGoesAndWhenThePersonChanges() {
        Person person = Staff.hire(api, Person.Role.BENCH);
        KioskToken token = Staff.token(api, KioskToken.Role.DOCK);
        Api kiosk = api.as(token.token());

        Api first = Staff.signedOn(kiosk, person);
        assertThat(first.get(ApiPaths.LIMITS).status()).isEqualTo(200);
        assertThat(first.delete(ApiPaths.CURRENT_SIGN_ON).status()).isEqualTo(204);
        assertThat(first.get(ApiPaths.LIMITS).status()).isEqualTo(401);

        Api second = Staff.signedOn(kiosk, person);
        Staff.setPin(api, person, "918273");
        assertThat(second.get(ApiPaths.LIMITS).status()).isEqualTo(401);
        assertThat(Staff.signOn(kiosk, person, Staff.PIN).status()).isEqualTo(401);
        assertThat(Staff.setPin(api, person, Staff.PIN).status()).isEqualTo(204);

        Api third = Staff.signedOn(kiosk, person);
        Person retired = new Person(person.id(), person.name(), person.badge(), person.role(), true);
        assertThat(api.put(ApiPaths.PEOPLE + "/" + person.id(), retired).status())
                .isEqualTo(200);
        assertThat(third.get(ApiPaths.LIMITS).status()).isEqualTo(401);
        assertThat(Staff.signOn(kiosk, person, Staff.PIN).problem().type()).isEqualTo(ProblemTypes.WRONG_BADGE_OR_PIN);

        Api fourth = Staff.signedOn(kiosk, Staff.hire(api, Person.Role.DOCK));
        assertThat(api.delete(ApiPaths.KIOSK_TOKENS + "/" + token.name()).status())
                .isEqualTo(204);
        assertThat(fourth.get(ApiPaths.LIMITS).status()).isEqualTo(401);
    }

    /** Sets a time of a person's sign-ons back, as a clock would. */
    private static void setBack(DataSource database, String column, Person person, Duration before)
            throws SQLException {
        try (Connection connection = database.getConnection();
                PreparedStatement update =
                        connection.prepareStatement("update sign_on set " + column + " = ? where person_id = ?")) {
            update.setObject(1, OffsetDateTime.now(ZoneOffset.UTC).minus(before));
            update.setObject(2, person.id());
            assertThat(update.executeUpdate()).isPositive();
        }
    }

    @Test
    void endsASignOnThatNobodyUsedForHalfAnHourAndAnyAfterTwelveHours(DataSource database) throws SQLException {
        Person person = Staff.hire(api, Person.Role.DOCK);
        Api kiosk = Staff.kiosk(api, KioskToken.Role.DOCK);
        SignOn fresh = Staff.signOn(kiosk, person, Staff.PIN).as(SignOn.class);
        assertThat(Duration.between(Instant.now(), fresh.endsAt()))
                .isBetween(Duration.ofHours(12).minusMinutes(1), Duration.ofHours(12));
        Api used = api.as(fresh.token());

        setBack(database, "last_used_at", person, Duration.ofMinutes(29));
        assertThat(used.get(ApiPaths.LIMITS).status()).isEqualTo(200);
        // That was a use, and counts as one from now on.
        setBack(database, "signed_on_at", person, Duration.ofMinutes(31));
        assertThat(used.get(ApiPaths.LIMITS).status()).isEqualTo(200);
        setBack(database, "last_used_at", person, Duration.ofMinutes(31));
        assertThat(used.get(ApiPaths.LIMITS).status()).isEqualTo(401);

        Api old = Staff.signedOn(kiosk, person);
        assertThat(old.get(ApiPaths.LIMITS).status()).isEqualTo(200);
        setBack(database, "ends_at", person, Duration.ofSeconds(1));
        assertThat(old.get(ApiPaths.LIMITS).status()).isEqualTo(401);
    }

    @Test
    void slowsDownAndThenStopsWhoGuesses() throws Exception {
        Person person = Staff.hire(api, Person.Role.DOCK);
        Api kiosk = Staff.kiosk(api, KioskToken.Role.DOCK);
        // All at once, so that no try slips past the count.
        ExecutorService guessers = Executors.newFixedThreadPool(8);
        List<Future<Api.Answer>> futures = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            String guess = Integer.toString(481_516 + i);
            Callable<Api.Answer> send = () -> Staff.signOn(kiosk, person, guess);
            futures.add(guessers.submit(send));
        }
        List<Integer> statuses = new ArrayList<>();
        for (Future<Api.Answer> future : futures) {
            statuses.add(future.get().status());
        }
        guessers.shutdown();
        assertThat(statuses).containsOnly(401, 429);
        // Three free tries and the one that starts the wait.
        assertThat(statuses).filteredOn(s -> s == 401).hasSize(4);

        Api.Answer right = Staff.signOn(kiosk, person, Staff.PIN);
        assertThat(right.problem().type()).isEqualTo(ProblemTypes.TOO_MANY_TRIES);
        assertThat(Integer.parseInt(right.header("Retry-After"))).isBetween(1, 6);

        Staff.setPin(api, person, Staff.PIN);
        assertThat(Staff.signOn(kiosk, person, Staff.PIN).status()).isEqualTo(201);
        assertThat(audit())
                .filteredOn(e -> person.id().equals(e.personId()) && e.outcome() == AuditEntry.Outcome.REFUSED)
                .hasSize(13);
    }

    @Test
    void boundsWrongTriesOfAKioskWhateverTheBadges() {
        Api kiosk = Staff.kiosk(api, KioskToken.Role.DOCK);
        int last = 0;
        for (int i = 0; i < 21; i++) {
            last = kiosk.post(ApiPaths.SIGN_ONS, new SignOn.Order("NOBODY-" + i, Staff.PIN))
                    .status();
            assertThat(last).isEqualTo(i < 20 ? 401 : 429);
        }
        assertThat(last).isEqualTo(429);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "12345",
                "1234567890123",
                "12345a",
                "111111",
                "121212",
                "123456",
                "987654",
                "\u0661\u0662\u0663\u0664\u0665\u0666"
            })
    void refusesPinsThatAreTriedFirst(String pin) {
        Person person = Staff.hire(api, Person.Role.DOCK);
        Api.Answer answer = Staff.setPin(api, person, pin);
        assertThat(answer.status()).isEqualTo(400);
        assertThat(answer.problem().field()).isEqualTo("pin");
        assertThat(pin.isEmpty() || !answer.text().contains(pin)).isTrue();
    }

    @Test
    void givesEveryBadgeToOnePersonOnly() {
        Person person = Staff.hire(api, Person.Role.DOCK);
        Person other = new Person(UUID.randomUUID(), "Other", person.badge(), Person.Role.MANAGER, false);
        assertThat(api.put(ApiPaths.PEOPLE + "/" + other.id(), other).problem().type())
                .isEqualTo(ProblemTypes.WRONG_STATE);
        assertThat(api.get(ApiPaths.PEOPLE + "/" + other.id()).status()).isEqualTo(404);
    }

    @Test
    void rotatesATokenSoThatALostAnswerLocksNobodyOut() {
        KioskToken old = Staff.token(api, KioskToken.Role.DOCK);
        String path = ApiPaths.KIOSK_TOKENS + "/" + old.name();
        KioskToken fresh = api.post(path + ApiPaths.ROTATE, List.of()).as(KioskToken.class);

        assertThat(fresh.token()).isNotEqualTo(old.token());
        assertThat(api.as(old.token()).get(ApiPaths.LIMITS).status()).isEqualTo(200);
        assertThat(api.as(fresh.token()).get(ApiPaths.LIMITS).status()).isEqualTo(200);

        assertThat(api.delete(path).status()).isEqualTo(204);
        assertThat(api.as(old.token()).get(ApiPaths.LIMITS).status()).isEqualTo(401);
        assertThat(api.as(fresh.token()).get(ApiPaths.LIMITS).status()).isEqualTo(401);
    }

    @Test
    void exportsTheLogAsCsvThatNoSpreadsheetRuns() {
        Person person = new Person(UUID.randomUUID(), "=1+1", "FORMULA-" + House.next(), Person.Role.DOCK, false);
        assertThat(api.put(ApiPaths.PEOPLE + "/" + person.id(), person).status())
                .isEqualTo(201);
        Staff.setPin(api, person, Staff.PIN);
        Staff.signedOn(Staff.kiosk(api, KioskToken.Role.DOCK), person);

        Api.Answer answer = api.get(ApiPaths.AUDIT_EXPORT);
        assertThat(answer.header("Content-Type")).startsWith("text/csv");
        List<String> lines = answer.text().lines().toList();
        assertThat(lines.get(0)).startsWith("number,at,done_by,kiosk,person_id,action,target,outcome");
        assertThat(lines).anyMatch(line -> line.contains(",'=1+1,")).noneMatch(line -> line.contains(",=1+1,"));
        assertThat(lines).hasSizeGreaterThan(2);
    }

    @Test
    void neverShowsATokenOrPinInTheLog() {
        Person person = Staff.hire(api, Person.Role.DOCK);
        KioskToken token = Staff.token(api, KioskToken.Role.DOCK);
        Staff.signedOn(api.as(token.token()), person);
        assertThat(api.get(ApiPaths.AUDIT_EXPORT).text()).doesNotContain(token.token(), Staff.PIN);
    }
}
