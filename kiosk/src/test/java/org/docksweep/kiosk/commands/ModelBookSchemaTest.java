package org.docksweep.kiosk.commands;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.ServiceLoader;
import org.docksweep.contract.ProvingGround;
import org.docksweep.fleet.ModelBook;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The published schema of a model book, tried with an independent validator. */
class ModelBookSchemaTest {
    private static final Path SCHEMA = Path.of("../docs/schema/model-book.schema.json");
    private static JsonSchema schema;

    @TempDir
    Path folder;

    @BeforeAll
    static void readSchema() throws IOException {
        schema = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(Files.readString(SCHEMA));
    }

    private static List<String> complaints(String json) {
        return schema.validate(json, InputFormat.JSON).stream()
                .map(Object::toString)
                .toList();
    }

    private static String template(String... options) {
        Object[] arguments = new Object[options.length + 3];
        arguments[0] = "template";
        arguments[1] = "--code";
        arguments[2] = "BOX12";
        System.arraycopy(options, 0, arguments, 3, options.length);
        CommandRun run = CommandRun.of(arguments);
        assertThat(run.exitCode()).as(run.err()).isZero();
        return run.out();
    }

    @Test
    void acceptsTheModelsOfTheDemoHouseAndThoseHeldBack() {
        ProvingGround ground =
                ServiceLoader.load(ProvingGround.class).findFirst().orElseThrow();
        String json = new String(JsonFiles.bytesOf(ground.book(ProvingGround.Models.ALL, 0)), StandardCharsets.UTF_8);

        assertThat(complaints(json)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"6, closed, 1, 0", "12, vented, 1, 6", "18, closed, 2, 4", "24, vented, 2, 8"})
    void acceptsWhatTheTemplateMakesAndSoDoesTheProgram(String slope, String box, String woofers, String pad)
            throws IOException {
        String json = template("--slope", slope, "--box", box, "--woofers", woofers, "--pad", pad);

        assertThat(complaints(json)).isEmpty();
        Path file = Files.writeString(folder.resolve("models.json"), json);
        ModelBook read = JsonFiles.read(file, ModelBook.class);
        assertThat(read.cabinetModels()).singleElement().satisfies(m -> {
            assertThat(m.code()).isEqualTo("BOX12");
            assertThat(m.positions()).hasSize(1 + Integer.parseInt(woofers));
        });
    }

    /** Values that a person may well get wrong, put into a good book. */
    @ParameterizedTest
    @CsvSource({
        "'\"capacitanceF\" : 7.82E-6', '\"capacitanceF\" : 7.82', capacitanceF",
        "'\"feed\" : \"PASSIVE\"', '\"feed\" : \"ACTIVE\"', feed",
        "'\"kind\" : \"VENTED\"', '\"kind\" : \"PORTED\"', kind",
        "'\"tuningHz\" : 52.0', '\"tuningHz\" : 0', tuningHz",
        "'\"way\" : \"HF\"', '\"way\" : \"TOP\"', way",
        "'\"nodeA\" : \"in\"', '\"nodeC\" : \"in\"', nodeA",
        "'\"toleranceRel\" : 0.25', '\"toleranceRel\" : 25', toleranceRel",
        "'\"massKg\" : 22.0', '\"massLb\" : 48', massKg"
    })
    void namesWhatIsWrong(String good, String bad, String word) {
        String json = template();
        assertThat(json).contains(good);

        assertThat(complaints(json.replaceFirst(java.util.regex.Pattern.quote(good), bad)))
                .isNotEmpty()
                .anyMatch(c -> c.contains(word));
    }

    @Test
    void saysWhatATemplateCannotBe() {
        CommandRun kilohertz = CommandRun.of("template", "--code", "B", "--crossover", "1.8");
        CommandRun slope = CommandRun.of("template", "--code", "B", "--slope", "10");

        assertThat(kilohertz.exitCode()).isEqualTo(3);
        assertThat(kilohertz.err()).contains("1.8 kHz is 1800");
        assertThat(slope.exitCode()).isEqualTo(3);
        assertThat(slope.err()).contains("6, 12, 18 or 24");
    }
}
