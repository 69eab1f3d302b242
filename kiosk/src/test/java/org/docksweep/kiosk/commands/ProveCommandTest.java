package org.docksweep.kiosk.commands;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProveCommandTest {
    private static final int RETURNS = 3;

    @TempDir
    Path folder;

    @ParameterizedTest
    @CsvSource({
        "--models, some, 'tuning, held-back, all or drawn'",
        "--noise, loud, LOW:HIGH",
        "--noise, 60:40, LOW:HIGH",
        "--temperature, 90, temperature",
        "--returns, 0, returns",
        "--unknown, 0.9, unknown share",
        "--converter-noise, 0, converter noise",
        "--threads, 0, threads",
        "--seed, 100000, held back"
    })
    void saysWhatIsWrongAndRunsNothing(String option, String value, String words) {
        CommandRun run = CommandRun.of("prove", option, value);

        assertThat(run.exitCode()).isEqualTo(3);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains(words);
    }

    @Test
    void namesTheSeverityFileItCannotRead() {
        Path missing = folder.resolve("none.csv");

        CommandRun run = CommandRun.of("prove", "--severities", missing.toString());

        assertThat(run.exitCode()).isEqualTo(3);
        assertThat(run.err()).contains("none.csv");
    }

    @Test
    void printsTheTableAndWritesEveryReturn() throws IOException {
        Path csv = folder.resolve("returns.csv");
        Path json = folder.resolve("counts.json");

        CommandRun run = CommandRun.of(
                "prove",
                "--quiet",
                "--returns",
                Integer.toString(RETURNS),
                "--good-units",
                "1",
                "--csv",
                csv.toString(),
                "--json",
                json.toString());

        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.out()).contains("Proving run: 3 of 3 returns", "Ambiguity groups", "groups above five: 0;");
        assertThat(Files.readAllLines(csv))
                .hasSize(1 + RETURNS)
                .first()
                .asString()
                .startsWith("return,label,model,fault");
        assertThat(Files.readString(json)).contains("\"returns\" : 3", "\"groupSizes\"");
    }
}
