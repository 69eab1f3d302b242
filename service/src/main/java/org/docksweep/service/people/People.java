package org.docksweep.service.people;

import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.docksweep.contract.Page;
import org.docksweep.contract.Person;
import org.docksweep.service.store.StoredJson;
import org.docksweep.service.web.Check;
import org.docksweep.service.web.Paging;
import org.docksweep.service.web.PutAnswer;
import org.docksweep.service.web.Refusal;
import org.springframework.data.domain.Limit;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Keeps the people. */
@Service
@Transactional
class People {
    private static final int LONGEST_NAME = 120;

    private final PersonRows people;
    private final SignOnRows signOns;
    private final PasswordEncoder pins;
    private final Clock clock;

    People(PersonRows people, SignOnRows signOns, PasswordEncoder pins, Clock clock) {
        this.people = people;
        this.signOns = signOns;
        this.pins = pins;
        this.clock = clock;
    }

    @Transactional(readOnly = true)
    Page<Person> page(UUID after, int limit) {
        Limit one = Limit.of(Paging.checked(limit) + 1);
        List<PersonRow> rows = after == null ? people.first(one) : people.after(after, one);
        return Paging.page(rows, limit, PersonRow::person, row -> row.getId().toString());
    }

    @Transactional(readOnly = true)
    Person find(UUID id) {
        return row(id).person();
    }

    private PersonRow row(UUID id) {
        return people.findById(id)
                .orElseThrow(
                        () -> Refusal.notFound("id", "there is no person " + id, "Look the id up at GET /api/people."));
    }

    /** New, or changed. Whoever is changed signs on anew, since role or name may be others now. */
    PutAnswer<Person> put(UUID id, Person person) {
        new Check()
                .that(id.equals(person.id()), "id", "must be the id in the address, but is " + person.id())
                .text(person.name(), LONGEST_NAME, "name")
                .that(
                        person.badge() != null && person.badge().matches("[A-Za-z0-9_-]{4,64}"),
                        "badge",
                        "must be 4 to 64 letters, digits, - or _")
                .present(person.role(), "role")
                .refuseIfWrong();
        Optional<PersonRow> before = people.findById(id);
        people.byBadge(person.badge())
                .filter(other -> !other.getId().equals(id) && !person.retired())
                .ifPresent(other -> {
                    throw Refusal.wrongState(
                            "badge",
                            "this badge belongs to " + other.person().name(),
                            "Give everybody a badge of their own, or retire that person first.");
                });
        if (before.isEmpty()) {
            people.saveAndFlush(new PersonRow(person));
            return new PutAnswer<>(true, person);
        }
        if (!before.get().person().equals(person)) {
            before.get().replace(person);
            people.flush();
            signOns.endOfPerson(id, StoredJson.cut(clock.instant()));
        }
        return new PutAnswer<>(false, person);
    }

    /** Sets a PIN, opens a locked account, and ends the sign-ons made with the PIN before. */
    void setPin(UUID id, Person.Pin order) {
        PersonRow row = row(id);
        PinRules.check(order.pin(), row.person().badge());
        row.setPin(pins.encode(order.pin()));
        people.flush();
        signOns.endOfPerson(id, StoredJson.cut(clock.instant()));
    }
}
