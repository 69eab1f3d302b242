package org.docksweep.kiosk.commands;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.CaptureHeader;
import org.docksweep.sweep.RecordingFiles;
import org.docksweep.sweep.SweepPlan;
import org.docksweep.sweep.WavFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What docs/recording-format.md says of its worked example is what the reader does. */
class RecordingPageTest {
    private static final Path PAGE = Path.of("../docs/recording-format.md");
    private static final Pattern CHECK_ROW = Pattern.compile("^\\| (\\d+) \\| ([0-9.]+) \\|.* \\| (-?[0-9.]+) \\|$");
    /** The page prints seven decimals. */
    private static final double PRINTED_V = 0.6e-7;

    @TempDir
    Path folder;

    @Test
    void playsTheCheckValuesOfThePage() throws IOException {
        SweepPlan plan = header().plan();
        double[] volts = plan.driveVolts();
        int rows = 0;
        for (String line : Files.readAllLines(PAGE)) {
            Matcher row = CHECK_ROW.matcher(line);
            if (row.matches()) {
                rows++;
                int frame = Integer.parseInt(row.group(1));
                assertThat(volts[frame]).as(line).isCloseTo(Double.parseDouble(row.group(3)), within(PRINTED_V));
                assertThat((frame - plan.startFrame(0)) / 48000.0)
                        .as(line)
                        .isCloseTo(Double.parseDouble(row.group(2)), within(PRINTED_V));
            }
        }
        assertThat(rows).isEqualTo(4);
        assertThat(plan.signal().frames()).isEqualTo(99472);
        assertThat(plan.startFrame(1)).isEqualTo(152272);
        assertThat(plan.totalFrames()).isEqualTo(280544);
    }

    @Test
    void readsACaptureOfTheLeastLengthThePageGivesAndNotOneFrameLess() throws IOException {
        int least = 152272 + 99472 + 2400;
        assertThat(curve(least, 0).exitCode()).isZero();
        CommandRun shorter = curve(least - 1, 0);
        assertThat(shorter.exitCode()).isEqualTo(1);
        assertThat(shorter.err()).contains("stopped before the sweep was over");
    }

    @Test
    void findsTheDelaysThePageAllows() throws IOException {
        for (double delayS : new double[] {-0.3, 0.5}) {
            assertThat(curve(280544 + 48000, (int) (delayS * 48000)).exitCode())
                    .as("delay of %s s", delayS)
                    .isZero();
        }
        CommandRun lacking = curve(280544, (int) (-0.3401 * 48000));
        assertThat(lacking.err()).contains("no silence before the sweep");
    }

    private CommandRun curve(int frames, int delay) throws IOException {
        CaptureHeader header = header();
        double[] volts = header.plan().driveVolts();
        float[][] samples = new float[2][frames];
        java.util.Random noise = new java.util.Random(20260501);
        for (int n = 0; n < frames; n++) {
            int played = n - delay;
            double v = played >= 0 && played < volts.length ? volts[played] : 0;
            samples[0][n] = (float) (v / 4 + 1e-5 * noise.nextGaussian());
            samples[1][n] = (float) (v / 5 + 1e-5 * noise.nextGaussian());
        }
        Path wav = folder.resolve("page.wav");
        RecordingFiles.write(wav, new Capture(header, samples), WavFormat.INT_24);
        return CommandRun.of("curve", wav);
    }

    /** Header of the sidecar printed on the page, read by the reader of recordings. */
    private CaptureHeader header() throws IOException {
        List<String> json = new ArrayList<>();
        boolean inside = false;
        for (String line : Files.readAllLines(PAGE)) {
            if (line.equals("```json")) {
                inside = true;
            } else if (line.equals("```")) {
                inside = false;
            } else if (inside) {
                json.add(line);
            }
        }
        byte[] sidecar = String.join("\n", json).getBytes(java.nio.charset.StandardCharsets.UTF_8);
        return RecordingFiles.decode("page.wav", twoChannels(), "page.json", sidecar)
                .header();
    }

    private byte[] twoChannels() {
        java.nio.ByteBuffer wav = java.nio.ByteBuffer.allocate(48).order(java.nio.ByteOrder.LITTLE_ENDIAN);
        wav.put("RIFF".getBytes()).putInt(40).put("WAVEfmt ".getBytes()).putInt(16);
        wav.putShort((short) 1).putShort((short) 2).putInt(48000).putInt(192000);
        wav.putShort((short) 4).putShort((short) 16);
        wav.put("data".getBytes()).putInt(4).putInt(0);
        return wav.array();
    }
}
