package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Enumeration;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.KioskToken;
import org.docksweep.contract.Person;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.service.backup.OfflineCommand;
import org.docksweep.service.store.StoredJson;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BackupTest {
    @TempDir
    Path house;

    @TempDir
    Path elsewhere;

    @TempDir
    Path files;

    private final ByteArrayOutputStream said = new ByteArrayOutputStream();

    private int command(Engine engine, Path folder, String... arguments) {
        List<String> all = new ArrayList<>(List.of(arguments));
        all.add("--docksweep.data-dir=" + folder);
        all.add("--logging.level.root=OFF");
        all.addAll(engine.settings(folder));
        said.reset();
        PrintStream print = new PrintStream(said, true, StandardCharsets.UTF_8);
        return OfflineCommand.run(print, print, all.toArray(String[]::new));
    }

    private static final byte[] RECORDING = "PK and what follows".getBytes(StandardCharsets.UTF_8);

    /** A house with one of everything that is written by its own way; returns a check-in to look for. */
    private static CheckInBody fill(Api api) {
        String model = House.newModel(api);
        List<AssetTag> tags = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            tags.add(House.newCabinet(api, model, CabinetStatus.OUT));
        }
        House.newList(api, model, tags);
        CheckInBody body = House.fail(tags.get(0), model, House.newCode());
        assertThat(House.put(api, body).status()).isEqualTo(201);
        assertThat(House.put(api, House.pass(tags.get(1), model)).status()).isEqualTo(201);
        String sha256 = StoredJson.sha256(RECORDING);
        assertThat(api.putBytes(ApiPaths.RECORDINGS + "/" + sha256, RECORDING, "application/zip")
                        .status())
                .isIn(200, 201);
        Staff.signedOn(Staff.kiosk(api, KioskToken.Role.DOCK), Staff.hire(api, Person.Role.BENCH));
        return body;
    }

    private static Path export(Api api, Path file) throws IOException {
        Api.Answer answer = api.get(ApiPaths.EXPORT + "?recordings=true");
        assertThat(answer.status()).isEqualTo(200);
        assertThat(answer.header("Content-Type")).isEqualTo("application/zip");
        return Files.write(file, answer.response().body());
    }

    /** Everything in an export but its manifest, which tells the time. */
    private static Map<String, String> content(Path file) throws IOException {
        Map<String, String> content = new TreeMap<>();
        try (ZipFile zip = new ZipFile(file.toFile())) {
            for (Enumeration<? extends ZipEntry> all = zip.entries(); all.hasMoreElements(); ) {
                ZipEntry entry = all.nextElement();
                if (!entry.getName().equals("manifest.json")) {
                    content.put(
                            entry.getName(),
                            new String(zip.getInputStream(entry).readAllBytes(), StandardCharsets.UTF_8));
                }
            }
        }
        return content;
    }

    @Test
    void bringsEverythingBackToTheLastByte() throws IOException {
        roundTrip(Engine.ofThisRun(), Engine.ofThisRun());
    }

    void roundTrip(Engine from, Engine to) throws IOException {
        CheckInBody body;
        Path exported;
        try (RunningService.Instance service = RunningService.Instance.on(from, house)) {
            body = fill(service.api());
            exported = export(service.api(), files.resolve("running.zip"));
        }
        Path backup = files.resolve("stopped.zip");
        assertThat(command(from, house, "backup", "--to=" + backup))
                .as("%s", said)
                .isZero();
        assertThat(content(backup)).isEqualTo(content(exported)).hasSizeGreaterThan(20);

        assertThat(command(to, elsewhere, "restore", "--from=" + backup))
                .as("%s", said)
                .isZero();
        assertThat(said.toString(StandardCharsets.UTF_8)).contains("and 1 recordings");

        try (RunningService.Instance service = RunningService.Instance.on(to, elsewhere)) {
            Api api = service.api();
            assertThat(content(export(api, files.resolve("again.zip")))).isEqualTo(content(backup));
            assertThat(api.get(ApiPaths.CHECK_INS + "/" + body.id()).as(CheckInBody.class))
                    .isEqualTo(body);
            assertThat(House.put(api, body).status()).isEqualTo(200);
            assertThat(api.get(ApiPaths.RECORDINGS + "/" + StoredJson.sha256(RECORDING))
                            .response()
                            .body())
                    .isEqualTo(RECORDING);
            // Goes on from there: numbers of the log that were given are not given again.
            fill(api);
        }
    }

    @Test
    void restoresNothingOfADamagedOrBrokenExportNorOverWhatIsThere() throws IOException {
        Path good = files.resolve("good.zip");
        try (RunningService.Instance service = RunningService.Instance.in(house)) {
            fill(service.api());
            export(service.api(), good);
        }
        Engine engine = Engine.ofThisRun();
        Path changed = rewritten(good, "tables/cabinet.jsonl", text -> text.replace("OUT", "READY"));
        assertThat(command(engine, elsewhere, "restore", "--from=" + changed)).isEqualTo(1);
        assertThat(said.toString(StandardCharsets.UTF_8)).contains("damaged", "cabinet");

        Path broken = rewritten(good, "manifest.json", text -> null);
        assertThat(command(engine, elsewhere, "restore", "--from=" + broken)).isEqualTo(1);
        assertThat(said.toString(StandardCharsets.UTF_8)).contains("not whole");

        Path noZip = Files.writeString(files.resolve("no.zip"), "no archive");
        assertThat(command(engine, elsewhere, "restore", "--from=" + noZip)).isEqualTo(1);

        assertThat(command(engine, elsewhere, "restore", "--from=" + good))
                .as("%s", said)
                .isZero();
        assertThat(command(engine, elsewhere, "restore", "--from=" + good)).isEqualTo(1);
        assertThat(said.toString(StandardCharsets.UTF_8)).contains("not empty");
    }

    private Path rewritten(Path file, String name, java.util.function.UnaryOperator<String> change) throws IOException {
        Path other = files.resolve("other-" + House.next() + ".zip");
        try (ZipFile zip = new ZipFile(file.toFile());
                ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(other))) {
            for (Enumeration<? extends ZipEntry> all = zip.entries(); all.hasMoreElements(); ) {
                ZipEntry entry = all.nextElement();
                byte[] bytes = zip.getInputStream(entry).readAllBytes();
                if (entry.getName().equals(name)) {
                    String text = change.apply(new String(bytes, StandardCharsets.UTF_8));
                    if (text == null) {
                        continue;
                    }
                    bytes = text.getBytes(StandardCharsets.UTF_8);
                }
                out.putNextEntry(new ZipEntry(entry.getName()));
                out.write(bytes);
                out.closeEntry();
            }
        }
        return other;
    }

    @Test
    void findsARecordingThatIsNoLongerWhatItWas() throws IOException {
        String sha256 = StoredJson.sha256(RECORDING);
        try (RunningService.Instance service = RunningService.Instance.in(house)) {
            fill(service.api());
        }
        assertThat(command(Engine.ofThisRun(), house, "scrub")).as("%s", said).isZero();
        assertThat(said.toString(StandardCharsets.UTF_8))
                .contains("1 intact, 0 damaged, 1 named by measurements but not here");

        Path file;
        try (Stream<Path> all = Files.walk(house.resolve("recordings"))) {
            file = all.filter(Files::isRegularFile).findFirst().orElseThrow();
        }
        byte[] bytes = Files.readAllBytes(file);
        bytes[7] ^= 1;
        Files.write(file, bytes);
        assertThat(command(Engine.ofThisRun(), house, "scrub")).isEqualTo(1);
        assertThat(said.toString(StandardCharsets.UTF_8)).contains("0 intact, 1 damaged", sha256);

        try (RunningService.Instance service = RunningService.Instance.in(house)) {
            Api.Answer answer = service.api().get(ApiPaths.RECORDINGS + "/" + sha256);
            assertThat(answer.status()).isEqualTo(500);
            assertThat(answer.problem().detail()).contains("damaged");
        }
    }

    @Test
    void saysHowItIsUsed() {
        assertThat(command(Engine.H2, house, "backup")).isEqualTo(2);
        assertThat(said.toString(StandardCharsets.UTF_8)).contains("--to=FILE");
        assertThat(command(Engine.H2, house, "restore", "--from=" + files.resolve("nothing")))
                .isEqualTo(2);
    }
}
