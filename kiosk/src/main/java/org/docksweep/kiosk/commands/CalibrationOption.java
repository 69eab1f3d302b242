package org.docksweep.kiosk.commands;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.docksweep.rigcal.RigCalibration;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.ImpedanceCurve;
import picocli.CommandLine.Option;

/** Option for the calibration of the rig that made the recordings. */
final class CalibrationOption {
    static final String NAME = "calibration.json";

    @Option(
            names = "--calibration",
            paramLabel = "FILE",
            description = "Calibration of the rig, as the calibrate command writes it. Default: " + NAME
                    + " in the folder of the recordings if there is one, otherwise none.")
    private Path file;

    private Path source;
    private RigCalibration calibration;

    /** Reads what is to be read, before any work is done. */
    void read(Path folder) throws IOException {
        Path usual = folder.resolve(NAME);
        source = file != null ? file : Files.exists(usual) ? usual : null;
        calibration = source == null ? RigCalibration.nominal("unknown") : JsonFiles.read(source, RigCalibration.class);
    }

    /** Refuses the calibration of one rig for the recordings of another. */
    void requireFits(Path recording, Capture capture) throws IOException {
        if (source != null && !calibration.rigId().equals(capture.header().rigId())) {
            throw new IOException(recording.getFileName() + ": rigId: must be the one of " + source.getFileName() + ", "
                    + calibration.rigId() + ", but is " + capture.header().rigId()
                    + ". Give the calibration of the rig that made the recording");
        }
    }

    ImpedanceCurve correct(ImpedanceCurve raw) {
        return calibration.correct(raw);
    }
}
