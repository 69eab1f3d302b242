package org.docksweep.contract;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

/**
 * What is booked to go out: the source of need dates.
 *
 * @param id identity, made by the client
 * @param orderNumber order number
 * @param customer customer name
 * @param outOn day it must leave
 * @param dueOn day it is due back
 * @param lines models and counts
 */
public record Dispatch(
        UUID id, String orderNumber, String customer, LocalDate outOn, LocalDate dueOn, List<Line> lines) {

    /**
     * Cabinets of one model.
     *
     * @param modelCode cabinet model
     * @param count how many, at least 1
     */
    public record Line(String modelCode, int count) {}
}
