package org.docksweep.kiosk.night;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.contract.MeasurementBody;
import org.docksweep.kiosk.rig.RecordingKeeper;
import org.docksweep.kiosk.spool.Wire;
import org.docksweep.rigcal.RigCalibration;

/** Leaves what the {@code judge} command needs to judge the recordings of the night again. */
final class NightRecordings {
    private NightRecordings() {}

    /**
     * Writes {@code fleet.json}, {@code calibration.json} and {@code recordings.csv}: the last sweep of every test point of every check-in.
     *
     * @param folder folder of the recordings
     * @param fleet what the kiosk knew
     * @param calibration calibration of the rig
     * @param checkIns check-ins of the night
     * @param keeper the recordings
     */
    static void index(
            Path folder,
            KioskSnapshot fleet,
            RigCalibration calibration,
            List<CheckInBody> checkIns,
            RecordingKeeper keeper) {
        List<String> lines = new ArrayList<>();
        lines.add("cabinet,model,test_point,file");
        for (CheckInBody checkIn : checkIns) {
            List<MeasurementBody> measurements = checkIn.measurements();
            for (int i = 0; i < measurements.size(); i++) {
                MeasurementBody m = measurements.get(i);
                String point = m.judgement().testPointCode();
                boolean last = measurements.subList(i + 1, measurements.size()).stream()
                        .noneMatch(later -> later.judgement().testPointCode().equals(point));
                if (last && m.recordingSha256() != null) {
                    Path file = folder.relativize(keeper.file(m.recordingSha256()));
                    lines.add(String.join(",", checkIn.tag().value(), checkIn.modelCode(), point, file.toString()));
                }
            }
        }
        try {
            Files.createDirectories(folder);
            Files.write(folder.resolve("recordings.csv"), lines);
            Files.write(folder.resolve("fleet.json"), Wire.json().writeValueAsBytes(fleet));
            Files.write(folder.resolve("calibration.json"), Wire.json().writeValueAsBytes(calibration));
        } catch (IOException e) {
            throw new UncheckedIOException("the index of the recordings cannot be written to " + folder, e);
        }
    }
}
