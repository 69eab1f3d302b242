package org.docksweep.service;

import java.util.UUID;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.KioskToken;
import org.docksweep.contract.Person;
import org.docksweep.contract.SignOn;

/** People of the invented house, each new, with badge and PIN. */
final class Staff {
    static final String PIN = "730518";

    private Staff() {}

    static Person hire(Api manager, Person.Role role) {
        int number = House.next();
        Person person = new Person(UUID.randomUUID(), "Person " + number, "BADGE-" + number, role, false);
        expect(201, manager.put(ApiPaths.PEOPLE + "/" + person.id(), person));
        expect(204, setPin(manager, person, PIN));
        return person;
    }

    static Api.Answer setPin(Api manager, Person person, String pin) {
        return manager.put(ApiPaths.PEOPLE + "/" + person.id() + ApiPaths.PIN, new Person.Pin(pin));
    }

    static Api kiosk(Api manager, KioskToken.Role role) {
        return manager.as(token(manager, role).token());
    }

    static KioskToken token(Api manager, KioskToken.Role role) {
        return expect(201, manager.post(ApiPaths.KIOSK_TOKENS, new KioskToken.Order("kiosk-" + House.next(), role)))
                .as(KioskToken.class);
    }

    static Api.Answer signOn(Api kiosk, Person person, String pin) {
        return kiosk.post(ApiPaths.SIGN_ONS, new SignOn.Order(person.badge(), pin));
    }

    static Api signedOn(Api kiosk, Person person) {
        return kiosk.as(expect(201, signOn(kiosk, person, PIN)).as(SignOn.class).token());
    }

    private static Api.Answer expect(int status, Api.Answer answer) {
        if (answer.status() != status) {
            throw new AssertionError("expected " + status + ", but got " + answer);
        }
        return answer;
    }
}
