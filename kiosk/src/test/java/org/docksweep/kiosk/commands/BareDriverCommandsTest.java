package org.docksweep.kiosk.commands;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.ServiceLoader;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.DemoHouse;
import org.docksweep.contract.DemoHouseProvider;
import org.docksweep.fleet.AssetTag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** From drivers on the bench rig to a reference and a verdict, by commands alone. */
class BareDriverCommandsTest {
    private static final long SEED = 3;

    @TempDir
    Path folder;

    private final List<String> index = new ArrayList<>(List.of("cabinet,model,test_point,file"));

    private void render(String label, String moment) {
        CommandRun run = CommandRun.of(
                "render", label, folder.resolve(label + ".wav"), "--driver", "HF", "--seed", SEED, "--moment", moment);
        assertThat(run.exitCode()).as(run.err()).isZero();
        index.add(label + ",BARE-TERN-44,BARE," + label + ".wav");
    }

    @Test
    void teachesADriverAndJudgesOthersByIt() throws IOException {
        DemoHouse house = ServiceLoader.load(DemoHouseProvider.class)
                .findFirst()
                .orElseThrow()
                .house(SEED);
        Path models = folder.resolve("models.json");
        JsonFiles.write(models, house.book());
        List<AssetTag> good = house.cabinets().stream()
                .filter(c -> c.modelCode().equals("SPIN12"))
                .map(CabinetBody::tag)
                .filter(house.referenceUnits()::contains)
                .limit(3)
                .toList();
        good.forEach(tag -> render(tag.value(), "before-hire"));
        Files.write(folder.resolve(RecordingIndex.NAME), index);
        Path references = folder.resolve("references.json");

        CommandRun taught = CommandRun.of("teach", folder, "--models", models, "-o", references, "--quiet");

        assertThat(taught.exitCode()).as(taught.err()).isZero();
        assertThat(taught.out()).contains("BARE-TERN-44 BARE: 3 units");
        index.subList(1, index.size()).clear();
        render("MCH-000131", "at-return");
        render("MCH-000128", "at-return");
        Files.write(folder.resolve(RecordingIndex.NAME), index);

        CommandRun judged = CommandRun.of("judge", folder, "--models", models, "--references", references, "--quiet");

        assertThat(judged.out().lines())
                .as("a healthy driver, and one with a diaphragm of half the rated impedance: %s", judged.err())
                .anySatisfy(line -> assertThat(line).contains("MCH-000131").contains("PASS"))
                .anySatisfy(line -> assertThat(line).contains("MCH-000128").contains("FAIL"));
    }

    @Test
    void namesThePositionsThereAre() {
        CommandRun run =
                CommandRun.of("render", "MCH-000131", folder.resolve("x.wav"), "--driver", "MF", "--seed", SEED);

        assertThat(run.exitCode()).isEqualTo(3);
        assertThat(run.err()).contains("[HF, LF]").contains("MF");
        assertThat(CommandRun.of("render", "MCH-000131", folder.resolve("x.wav"), "--driver", "HF", "--point", "IN")
                        .err())
                .contains("exclude each other");
    }
}
