package org.docksweep.kiosk.printing;

import org.docksweep.contract.FleetStatus;
import org.docksweep.contract.ReturnReport;
import org.docksweep.paper.RepairTagContent;

/** Makes papers. Blocking: call it from a thread of its own. */
public interface Papers {
    /**
     * Prints a repair tag.
     *
     * @param content what it tells
     * @return what became of it; failures are told, never thrown
     */
    PrintResult repairTag(RepairTagContent content);

    /**
     * Prints a return sheet.
     *
     * @param report how the list came back
     * @return what became of it
     */
    PrintResult returnSheet(ReturnReport report);

    /**
     * Prints a fleet status sheet.
     *
     * @param status what the fleet can do
     * @return what became of it
     */
    PrintResult statusSheet(FleetStatus status);

    /**
     * What {@link #repairTag} would send to the printer.
     *
     * @param content what the tag tells
     * @return the paper as it would come out
     * @throws RuntimeException if it cannot be drawn
     */
    PaperView viewTag(RepairTagContent content);

    /**
     * What {@link #returnSheet} would print.
     *
     * @param report how the list came back
     * @return the paper as it would come out
     * @throws RuntimeException if it cannot be drawn
     */
    PaperView viewSheet(ReturnReport report);

    /**
     * What {@link #pdf} would print.
     *
     * @param pdf the paper's bytes
     * @return the paper as it would come out
     * @throws RuntimeException if it cannot be drawn
     */
    PaperView view(byte[] pdf);

    /**
     * Prints a paper that the service made.
     *
     * @param name name of the file, without ending
     * @param pdf its bytes
     * @return what became of it
     */
    PrintResult pdf(String name, byte[] pdf);
}
