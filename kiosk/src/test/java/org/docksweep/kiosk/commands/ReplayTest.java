package org.docksweep.kiosk.commands;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.docksweep.sweep.RigException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Committed recordings judged again give the committed verdicts, every figure to the last digit. */
class ReplayTest {
    @TempDir
    Path folder;

    @Test
    void judgesTheCommittedRecordingsAsEver() throws IOException, RigException {
        String write = System.getProperty("docksweep.replay.write", "");
        if (write.equals("recordings")) {
            new ReplaySet(ReplaySet.FOLDER).write(folder);
        }
        if (!write.isEmpty()) {
            replay(ReplaySet.FOLDER);
        }
        replay(folder);
        ReplaySet.assertSame(folder, "this Java runtime");
    }

    @Test
    void findsWhatIsReallyThere() throws IOException {
        assertThat(Files.readAllLines(ReplaySet.FOLDER.resolve("verdicts.csv")))
                .extracting(line -> line.replaceFirst("(([^,]*,){3}[^,]*),.*", "$1"))
                .containsExactly(
                        "cabinet,verdict,prompt,watch",
                        "healthy,PASS,NONE,false",
                        "hf-open,FAIL,NONE,false",
                        "shorted,FAIL,NONE,false",
                        "clipped,SWEEP_AGAIN,SWEEP_AGAIN,false",
                        "unplugged,SWEEP_AGAIN,PLUG_IN,false");
    }

    private static void replay(Path into) throws IOException {
        CommandRun run = CommandRun.of((Object[]) ReplaySet.command(into));
        assertThat(run.err()).isEmpty();
        assertThat(run.exitCode()).isZero();
        Files.writeString(into.resolve("verdicts.csv"), run.out());
    }
}
