package org.docksweep.contract;

/** Makes invented houses; found by {@link java.util.ServiceLoader}. */
public interface DemoHouseProvider {
    /**
     * The house of a seed: the same seed gives the same house, unit by unit.
     *
     * @param seed seed
     * @return the house
     */
    DemoHouse house(long seed);
}
