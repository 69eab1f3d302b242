package org.docksweep.service.store;

/** Is called within every write transaction of {@link Transactions}, so that what it notes is stored with it or not at all. */
public interface WriteWitness {
    /** Something was written; the transaction is about to be committed. */
    void written();
}
