package org.docksweep.service.checkins;

import io.micrometer.core.instrument.MeterRegistry;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Component;
import org.springframework.transaction.event.TransactionalEventListener;

/** Counts check-ins by route once they are committed, where metrics are switched on. */
@Component
class CheckInCount {
    private final ObjectProvider<MeterRegistry> registries;

    CheckInCount(ObjectProvider<MeterRegistry> registries) {
        this.registries = registries;
    }

    @TransactionalEventListener
    void stored(CheckInStored stored) {
        registries.ifAvailable(registry -> registry.counter(
                        "docksweep.check-ins", "route", stored.body().route().name())
                .increment());
    }
}
