package org.docksweep.kiosk.bench;

import org.docksweep.fleet.Reason;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.bench.BenchState.Message;
import org.docksweep.kiosk.printing.PaperView;
import org.docksweep.kiosk.printing.Papers;
import org.docksweep.kiosk.printing.PrintResult;
import org.docksweep.kiosk.service.ServiceProblem;
import org.docksweep.kiosk.service.ServiceUnreachable;

/** Prints the procedure that is shown, with the job on it. */
final class CardPrinter {
    private CardPrinter() {}

    static PaperView view(BenchOffice office, Papers papers, OpenJob job) throws ServiceProblem, ServiceUnreachable {
        return papers.view(office.printedCard(job.suggested().orElseThrow(), job.code()));
    }

    static Message print(BenchOffice office, Papers papers, OpenJob job) throws ServiceProblem, ServiceUnreachable {
        var suggested = job.suggested().orElseThrow();
        PrintResult result =
                papers.pdf("card-" + job.code() + "-" + suggested.purpose(), office.printedCard(suggested, job.code()));
        return new Message(
                result.outcome() == PrintResult.Outcome.FAILED ? ReadingState.FAULT : ReadingState.OK,
                Reason.of("bench-card-" + result.outcome().name(), result.words()));
    }
}
