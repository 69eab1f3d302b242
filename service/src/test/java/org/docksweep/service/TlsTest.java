package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.KeyStore;
import java.security.cert.Certificate;
import java.security.cert.X509Certificate;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManagerFactory;
import org.docksweep.contract.ApiPaths;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** TLS as docs/operations.md has it: a key store made by keytool, named by an SSL bundle. */
class TlsTest {
    /** Half a second apart, at least. */
    private static final int TRIES = 240;

    private static final String PASSWORD = "secret-of-the-test";

    @TempDir
    Path folder;

    private Path keyStore() throws IOException, InterruptedException {
        return keyStore("house.p12");
    }

    private Path keyStore(String name) throws IOException, InterruptedException {
        Path file = folder.resolve(name);
        Process keytool = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "keytool")
                                .toString(),
                        "-genkeypair",
                        "-alias",
                        "house",
                        "-keyalg",
                        "EC",
                        "-dname",
                        "CN=localhost",
                        "-ext",
                        "SAN=dns:localhost,ip:127.0.0.1",
                        "-storetype",
                        "PKCS12",
                        "-keystore",
                        file.toString(),
                        "-storepass",
                        PASSWORD,
                        "-validity",
                        "2")
                .redirectErrorStream(true)
                .start();
        String said = new String(keytool.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
        assertThat(keytool.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(keytool.exitValue()).as(said).isZero();
        return file;
    }

    private static Certificate certificate(Path keyStore) throws Exception {
        KeyStore store = KeyStore.getInstance("PKCS12");
        try (InputStream in = Files.newInputStream(keyStore)) {
            store.load(in, PASSWORD.toCharArray());
        }
        return store.getCertificate("house");
    }

    private static HttpClient trusting(Path... keyStores) throws Exception {
        KeyStore trusted = KeyStore.getInstance("PKCS12");
        trusted.load(null, null);
        for (Path keyStore : keyStores) {
            trusted.setCertificateEntry(keyStore.getFileName().toString(), certificate(keyStore));
        }
        TrustManagerFactory trust = TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
        trust.init(trusted);
        SSLContext context = SSLContext.getInstance("TLS");
        context.init(null, trust.getTrustManagers(), null);
        return HttpClient.newBuilder().sslContext(context).build();
    }

    @Test
    void listensBeyondLoopbackOverTlsOnly() throws Exception {
        Path keyStore = keyStore();
        try (RunningService.Instance service = RunningService.Instance.in(
                folder.resolve("data"),
                "--server.address=0.0.0.0",
                "--server.ssl.bundle=house",
                "--spring.ssl.bundle.jks.house.keystore.location=file:" + keyStore,
                "--spring.ssl.bundle.jks.house.keystore.password=" + PASSWORD,
                "--spring.ssl.bundle.jks.house.reload-on-update=true")) {
            URI address = URI.create("https://localhost:" + service.api().root.getPort() + ApiPaths.LIMITS);
            HttpRequest request = HttpRequest.newBuilder(address)
                    .header("Authorization", "Bearer " + RunningService.MANAGER_TOKEN)
                    .build();

            HttpResponse<String> answer = trusting(keyStore).send(request, HttpResponse.BodyHandlers.ofString());

            assertThat(answer.statusCode()).isEqualTo(200);
            assertThat(answer.sslSession()).isPresent();
            assertThat(answer.sslSession().orElseThrow().getProtocol()).isIn("TLSv1.2", "TLSv1.3");
            assertThat(((X509Certificate) answer.sslSession().orElseThrow().getPeerCertificates()[0])
                            .getSubjectX500Principal()
                            .getName())
                    .isEqualTo("CN=localhost");
            assertThat(answer.headers().firstValue("Strict-Transport-Security")).isPresent();
            // Plain HTTP on that port gets no answer of the service.
            assertThat(service.api().get(ApiPaths.LIMITS).status()).isEqualTo(400);
        }
    }

    /** A new client each time, so that nothing is resumed. */
    private static Certificate served(URI address, Path... trusted) throws Exception {
        return trusting(trusted)
                .send(HttpRequest.newBuilder(address).build(), HttpResponse.BodyHandlers.ofString())
                .sslSession()
                .orElseThrow()
                .getPeerCertificates()[0];
    }

    @Test
    void servesARenewedCertificateWithoutARestart() throws Exception {
        Path keyStore = keyStore();
        Path before = Files.copy(keyStore, folder.resolve("before.p12"));
        Path renewed = keyStore("renewed.p12");
        assertThat(certificate(renewed)).isNotEqualTo(certificate(before));
        try (RunningService.Instance service = RunningService.Instance.in(
                folder.resolve("data"),
                "--server.ssl.bundle=house",
                "--spring.ssl.bundle.jks.house.keystore.location=file:" + keyStore,
                "--spring.ssl.bundle.jks.house.keystore.password=" + PASSWORD,
                "--spring.ssl.bundle.jks.house.reload-on-update=true",
                "--spring.ssl.bundle.watch.file.quiet-period=1s")) {
            URI address = URI.create("https://localhost:" + service.api().root.getPort() + ApiPaths.HEALTH);
            assertThat(served(address, before, renewed)).isEqualTo(certificate(before));

            Files.copy(renewed, folder.resolve("house.p12.new"));
            Files.move(
                    folder.resolve("house.p12.new"),
                    keyStore,
                    StandardCopyOption.ATOMIC_MOVE,
                    StandardCopyOption.REPLACE_EXISTING);

            CountDownLatch never = new CountDownLatch(1);
            Certificate now = served(address, before, renewed);
            for (int i = 0; i < TRIES && !now.equals(certificate(renewed)); i++) {
                never.await(500, TimeUnit.MILLISECONDS);
                now = served(address, before, renewed);
            }
            assertThat(now).isEqualTo(certificate(renewed));
        }
    }
}
