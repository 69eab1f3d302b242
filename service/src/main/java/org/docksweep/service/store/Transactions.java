package org.docksweep.service.store;

import java.util.List;
import java.util.function.Supplier;
import org.springframework.dao.ConcurrencyFailureException;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.dao.support.DataAccessUtils;
import org.springframework.orm.jpa.EntityManagerFactoryUtils;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Runs a write in one transaction, and once more from the start when another writer got there first: the second run
 * sees what the other wrote and answers accordingly.
 */
@Component
public class Transactions {
    private static final int ATTEMPTS = 5;

    private final TransactionTemplate write;
    private final TransactionTemplate read;
    private final Durability durability;
    private final List<WriteWitness> witnesses;

    Transactions(PlatformTransactionManager manager, Durability durability, List<WriteWitness> witnesses) {
        this.write = new TransactionTemplate(manager);
        this.read = new TransactionTemplate(manager);
        this.read.setReadOnly(true);
        this.durability = durability;
        this.witnesses = List.copyOf(witnesses);
    }

    /**
     * Writes, and returns only when what was written would survive a power cut.
     *
     * @param work what to do; may run several times, each time in a fresh transaction
     * @param <T> result type
     * @return its result
     */
    public <T> T write(Supplier<T> work) {
        return writeNotedByItself(() -> {
            T done = work.get();
            witnesses.forEach(WriteWitness::written);
            return done;
        });
    }

    /**
     * Writes like {@link #write}, but leaves it to the work to note what was done.
     *
     * @param work what to do; may run several times, each time in a fresh transaction
     * @param <T> result type
     * @return its result
     */
    public <T> T writeNotedByItself(Supplier<T> work) {
        for (int attempt = 1; ; attempt++) {
            try {
                T result = committed(work);
                durability.force();
                return result;
            } catch (RuntimeException e) {
                // What comes straight from the session was not translated on its way: a row somebody else holds.
                RuntimeException why = DataAccessUtils.translateIfNecessary(
                        e, EntityManagerFactoryUtils::convertJpaAccessExceptionIfPossible);
                if (attempt == ATTEMPTS
                        || !(why instanceof DataIntegrityViolationException
                                || why instanceof ConcurrencyFailureException)) {
                    throw why;
                }
            }
        }
    }

    private <T> T committed(Supplier<T> work) {
        durability.begins();
        try {
            return write.execute(status -> work.get());
        } finally {
            durability.ended();
        }
    }

    /**
     * Reads in one transaction.
     *
     * @param work what to read
     * @param <T> result type
     * @return its result
     */
    public <T> T read(Supplier<T> work) {
        return read.execute(status -> work.get());
    }
}
