package org.docksweep.demo;

import java.util.List;
import java.util.Random;

/** Invented people and customers. */
final class HouseNames {
    private static final List<String> FIRST =
            List.of("Ines", "Tomas", "Runa", "Piet", "Alma", "Jorik", "Senna", "Mads", "Edda", "Bram");
    private static final List<String> LAST =
            List.of("Windle", "Strandby", "Oxholm", "Kelling", "Dravik", "Fenwater", "Holmsted", "Tidemar");
    private static final List<String> CUSTOMERS = List.of(
            "Lantern Pier Festival",
            "Saltmarsh Players",
            "Northbeach Town Days",
            "Harbour Lights Revue",
            "Tidepool Conference Group",
            "Seagrass Open Air");

    private HouseNames() {}

    static String person(Random random) {
        return FIRST.get(random.nextInt(FIRST.size())) + " " + LAST.get(random.nextInt(LAST.size()));
    }

    static String customer(Random random) {
        return CUSTOMERS.get(random.nextInt(CUSTOMERS.size()));
    }
}
