package org.docksweep.paper;

import java.time.LocalDate;
import java.util.List;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.fleet.ModelBook;
import org.docksweep.gate.PointReference;

/**
 * What a repair tag tells.
 *
 * @param checkIn the failed check-in; its job code is the scan code
 * @param cabinet the cabinet with its drivers
 * @param book models, for the drawing and the numbers of the driver
 * @param references references of the model, for the ribbon behind the curve
 * @param lastEvents last events of the position at fault (or of the cabinet), newest first; three are shown
 * @param needOn day the cabinet is needed, or null when not known where the tag is printed
 */
public record RepairTagContent(
        CheckInBody checkIn,
        CabinetBody cabinet,
        ModelBook book,
        List<PointReference> references,
        List<HistoryEvent> lastEvents,
        LocalDate needOn) {}
