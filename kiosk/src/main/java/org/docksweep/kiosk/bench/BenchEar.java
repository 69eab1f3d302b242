package org.docksweep.kiosk.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.util.Comparator;
import java.util.Optional;
import org.docksweep.contract.MeasurementBody;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.ReadingState;
import org.docksweep.judge.PointJudgement;
import org.docksweep.kiosk.bench.BenchState.Message;
import org.docksweep.kiosk.listening.Listening;
import org.docksweep.kiosk.rig.RecordingKeeper;
import org.docksweep.kiosk.service.ServiceProblem;
import org.docksweep.kiosk.service.ServiceUnreachable;
import org.docksweep.sweep.SoundPrint;

/**
 * Listening at the bench: to the sweep that was just played here, else to the one that brought the cabinet here. Lives on the bench's thread.
 */
final class BenchEar {
    /** A test point that fails comes before any that does not. */
    private static final double FAILED = 1000;

    private final BenchParts parts;
    private final BenchOffice office;
    private String sha256;
    private Listening.Sweep sweep;

    BenchEar(BenchParts parts, BenchOffice office) {
        this.parts = parts;
        this.office = office;
    }

    Message listen(OpenJob job, Optional<Listening.Sweep> here) throws ServiceProblem, ServiceUnreachable {
        try {
            Optional<Listening.Sweep> at = at(job, here);
            return at.isEmpty() ? nothing() : message(parts.listening().listen(at.get()));
        } catch (IOException e) {
            return unreadable(e);
        }
    }

    Message keep(OpenJob job, Optional<Listening.Sweep> here) throws ServiceProblem, ServiceUnreachable {
        try {
            Optional<Listening.Sweep> at = at(job, here);
            return at.isEmpty() ? nothing() : message(parts.listening().keep(at.get()));
        } catch (IOException e) {
            return unreadable(e);
        }
    }

    /** How much there is to hear at a test point: clearest event of those that fail, else of all. */
    static double tells(PointJudgement point) {
        SoundPrint print = point.acoustic() == null ? null : point.acoustic().print();
        double event =
                print == null || print.event() == null ? 0 : print.event().score();
        return event + (point.verdict() == Verdict.FAIL ? FAILED : 0);
    }

    private Optional<Listening.Sweep> at(OpenJob job, Optional<Listening.Sweep> here)
            throws ServiceProblem, ServiceUnreachable, IOException {
        if (here.isPresent()) {
            return here;
        }
        Optional<MeasurementBody> measured =
                job.recorded().stream().max(Comparator.comparingDouble(m -> tells(m.judgement())));
        if (measured.isPresent() && !measured.get().recordingSha256().equals(sha256)) {
            sweep = read(job, measured.get());
            sha256 = measured.get().recordingSha256();
        }
        return measured.map(m -> sweep);
    }

    /** The dock's recording: here, when dock and bench are one kiosk, else at the service. */
    private Listening.Sweep read(OpenJob job, MeasurementBody measured)
            throws ServiceProblem, ServiceUnreachable, IOException {
        String hash = measured.recordingSha256();
        RecordingKeeper here = parts.dock().recordings();
        byte[] archive = Files.exists(here.file(hash)) ? here.bytes(hash) : office.recording(hash);
        return new Listening.Sweep(
                job.file().job().tag(),
                measured.judgement().testPointCode(),
                RecordingKeeper.read(hash + ".zip", archive));
    }

    private static Message message(Listening.Said said) {
        return new Message(said.state(), said.text());
    }

    private static Message nothing() {
        return new Message(ReadingState.WATCH, Reason.of("listen-nothing-kept"));
    }

    private static Message unreadable(IOException e) {
        return new Message(ReadingState.FAULT, Reason.of("listen-unreadable", String.valueOf(e.getMessage())));
    }
}
