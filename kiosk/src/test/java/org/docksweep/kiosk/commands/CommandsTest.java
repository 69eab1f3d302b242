package org.docksweep.kiosk.commands;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.docksweep.kiosk.Main;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CommandsTest {
    @TempDir
    Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @Test
    void namesTheFileAndTheRemedyWhenARecordingCannotBeRead() {
        assertThat(run("curve", folder.resolve("none.wav").toString())).isEqualTo(3);
        assertThat(err.toString()).contains("none.wav").contains("missing");
    }

    @Test
    void refusesAFolderWithoutFleet() {
        assertThat(run("judge", folder.toString())).isEqualTo(3);
        assertThat(err.toString()).contains("fleet.json");
    }

    @Test
    void namesLineAndColumnsOfABadIndex() throws IOException {
        Files.writeString(folder.resolve(RecordingIndex.NAME), "cabinet,model\n");
        assertThat(indexError()).contains("line 1").contains("cabinet,model,test_point,file");
        Files.writeString(
                folder.resolve(RecordingIndex.NAME),
                "cabinet,model,test_point,file\nTST-000001,ONE,IN,a.wav\nTST-000002,ONE\n");
        assertThat(indexError()).contains("line 3").contains("TST-000002,ONE");
    }

    @Test
    void keepsRowsOfOneCabinetTogether() throws IOException {
        Files.writeString(
                folder.resolve(RecordingIndex.NAME),
                "cabinet,model,test_point,file\nA,BIA,LF,a.wav\nB,ONE,IN,b.zip\nA,BIA,HF,c.wav\n");
        assertThat(RecordingIndex.read(folder).get("A"))
                .extracting(RecordingIndex.Row::testPointCode)
                .containsExactly("LF", "HF");
    }

    @Test
    void refusesANightWithoutService() {
        assertThat(run("night", "--folder", folder.toString(), "--headless")).isEqualTo(3);
        assertThat(err.toString()).contains("--service-jar");
    }

    @Test
    void answersAWrongCommandLineWithTwo() {
        assertThat(run("night", "--seed", "seven")).isEqualTo(2);
    }

    private String indexError() {
        try {
            RecordingIndex.read(folder);
            return "no error";
        } catch (IOException e) {
            return e.getMessage();
        }
    }

    private int run(String... arguments) {
        return Main.commandLine()
                .setOut(new PrintWriter(out, true))
                .setErr(new PrintWriter(err, true))
                .execute(arguments);
    }
}
