package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.Random;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.ProblemTypes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

@ExtendWith(RunningService.class)
class RecordingsTest {
    private static final String ZIP = "application/zip";
    private static final long SEED_OF_THE_BYTES = 5;

    private final Api api;

    RecordingsTest(Api api) {
        this.api = api;
    }

    private static byte[] archive(int bytes) {
        byte[] archive = new byte[bytes];
        new Random(SEED_OF_THE_BYTES + bytes).nextBytes(archive);
        archive[0] = 'P';
        archive[1] = 'K';
        return archive;
    }

    private static String path(byte[] archive) throws Exception {
        return ApiPaths.RECORDINGS + "/"
                + HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(archive));
    }

    @Test
    void givesBackTheSameBytes() throws Exception {
        byte[] archive = archive(1_500_000);

        assertThat(api.putBytes(path(archive), archive, ZIP).status()).isEqualTo(201);
        assertThat(api.putBytes(path(archive), archive, ZIP).status()).isEqualTo(200);
        Api.Answer answer = api.get(path(archive));
        assertThat(answer.header("Content-Type")).isEqualTo(ZIP);
        assertThat(answer.response().body()).isEqualTo(archive);
    }

    @Test
    void refusesBytesThatAreNotWhatTheAddressSays() throws Exception {
        byte[] archive = archive(2_000);
        byte[] damaged = archive.clone();
        damaged[1_000] ^= 1;

        Api.Answer answer = api.putBytes(path(archive), damaged, ZIP);

        assertThat(answer.problem().type()).isEqualTo(ProblemTypes.BAD_FIELD);
        assertThat(answer.problem().field()).isEqualTo("sha256");
        assertThat(api.get(path(archive)).status()).isEqualTo(404);
    }

    @Test
    void refusesWhatIsNoArchive() throws Exception {
        byte[] text = "RIFF....WAVE".getBytes(java.nio.charset.StandardCharsets.US_ASCII);
        assertThat(api.putBytes(path(text), text, ZIP).problem().type()).isEqualTo(ProblemTypes.UNREADABLE);
        assertThat(api.putBytes(path(text), new byte[0], ZIP).problem().type()).isEqualTo(ProblemTypes.BAD_FIELD);
        assertThat(api.get(path(text)).status()).isEqualTo(404);
    }
}
