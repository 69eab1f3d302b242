package org.docksweep.service.store;

import org.hibernate.boot.registry.StandardServiceRegistryBuilder;
import org.hibernate.bytecode.internal.none.BytecodeProviderImpl;
import org.hibernate.bytecode.spi.BytecodeProvider;
import org.hibernate.service.spi.ServiceContributor;

/**
 * Keeps Hibernate from generating classes for every entity at start: proxies, which nothing here uses since entities name
 * each other by their keys, and quicker access to fields, which costs more than it saves. Named in META-INF/services.
 */
public final class NoGeneratedClasses implements ServiceContributor {
    @Override
    public void contribute(StandardServiceRegistryBuilder builder) {
        builder.addService(BytecodeProvider.class, new BytecodeProviderImpl());
    }
}
