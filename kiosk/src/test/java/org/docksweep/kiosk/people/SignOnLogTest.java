package org.docksweep.kiosk.people;

import static org.assertj.core.api.Assertions.assertThat;
import static org.docksweep.kiosk.people.SignOnBench.INES;
import static org.docksweep.kiosk.people.SignOnBench.INES_PIN;

import java.nio.file.Files;
import java.nio.file.Path;
import org.docksweep.kiosk.LogEar;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SignOnLogTest {
    @TempDir
    private Path folder;

    @Test
    void saysWhoSignedOnAndNeverWithWhatPin() throws Exception {
        String wrong = "907341";
        try (LogEar ear = new LogEar();
                SignOnBench bench = new SignOnBench(folder)) {
            bench.enter(INES, wrong, INES_PIN);
            bench.desk.signOff();
            bench.refuses = Problems.of(500, "");
            bench.enter(INES, wrong, INES_PIN);
            bench.desk.signOff();
            bench.refuses = null;
            bench.away = true;
            bench.enter(INES, wrong, INES_PIN);
            bench.desk.signOff();
            bench.away = false;
            bench.settled();
            Files.delete(bench.file());
            Files.createDirectories(bench.file().resolve("in-the-way"));
            bench.enter(INES, INES_PIN);

            assertThat(ear.heard())
                    .contains("Ines Falk signed on", "refused", "without the service", "cannot be kept")
                    .doesNotContain(INES_PIN, wrong, "a-token");
        }
    }
}
