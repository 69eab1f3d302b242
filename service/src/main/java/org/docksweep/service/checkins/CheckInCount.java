package org.docksweep.service.checkins;

import io.micrometer.core.instrument.MeterRegistry;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Component;
import org.springframework.transaction.event.TransactionalEventListener;

/** Counts check-ins by route once they are committed, where metrics are switched on. */
@Component
class CheckInCount {
    private final MeterRegistry registry;

    CheckInCount(ObjectProvider<MeterRegistry> registries) {
        this.registry = registries.getIfAvailable();
    }

    @TransactionalEventListener
    void stored(CheckInStored stored) {
        if (registry != null) {
            registry.counter(
                            "docksweep.check-ins",
                            "route",
                            stored.body().route().name())
                    .increment();
        }
    }
}
