package org.docksweep.service.people;

import jakarta.annotation.security.RolesAllowed;
import java.util.UUID;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.Page;
import org.docksweep.contract.Person;
import org.docksweep.service.store.Transactions;
import org.docksweep.service.web.Paging;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RolesAllowed("MANAGER")
class PeopleController {
    private final People people;
    private final Transactions transactions;

    PeopleController(People people, Transactions transactions) {
        this.people = people;
        this.transactions = transactions;
    }

    @GetMapping(ApiPaths.PEOPLE)
    Page<Person> page(
            @RequestParam(required = false) UUID after, @RequestParam(defaultValue = Paging.DEFAULT_LIMIT) int limit) {
        return people.page(after, limit);
    }

    @GetMapping(ApiPaths.PEOPLE + "/{id}")
    Person find(@PathVariable UUID id) {
        return people.find(id);
    }

    @PutMapping(ApiPaths.PEOPLE + "/{id}")
    ResponseEntity<Person> put(@PathVariable UUID id, @RequestBody Person person) {
        return transactions.write(() -> people.put(id, person)).response();
    }

    @PutMapping(ApiPaths.PEOPLE + "/{id}" + ApiPaths.PIN)
    @ResponseStatus(HttpStatus.NO_CONTENT)
    void setPin(@PathVariable UUID id, @RequestBody Person.Pin pin) {
        transactions.write(() -> {
            people.setPin(id, pin);
            return id;
        });
    }
}
