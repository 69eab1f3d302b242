package org.docksweep.contract;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.docksweep.fleet.AssetTag;

/**
 * What is due back from one rental order.
 *
 * @param id identity, made by the client
 * @param orderNumber order number of the house
 * @param customer customer name
 * @param dueOn day it is due back
 * @param closed whether the list was closed
 * @param lines cabinets that went out on the order
 */
public record ReturnList(
        UUID id, String orderNumber, String customer, LocalDate dueOn, boolean closed, List<Line> lines) {

    /**
     * One cabinet due back.
     *
     * @param tag asset tag
     * @param modelCode its model
     */
    public record Line(AssetTag tag, String modelCode) {}
}
