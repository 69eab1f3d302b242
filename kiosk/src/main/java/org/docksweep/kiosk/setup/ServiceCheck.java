package org.docksweep.kiosk.setup;

import java.io.IOException;
import java.net.ConnectException;
import java.net.URI;
import java.net.UnknownHostException;
import java.net.http.HttpTimeoutException;
import java.nio.channels.UnresolvedAddressException;
import java.security.cert.CertificateExpiredException;
import java.security.cert.CertificateNotYetValidException;
import java.util.Locale;
import java.util.Set;
import javax.net.ssl.SSLException;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.fleet.Reason;
import org.docksweep.kiosk.service.ServiceClient;
import org.docksweep.kiosk.service.ServiceProblem;
import org.docksweep.kiosk.service.ServiceUnreachable;

/** Checks what is typed about the service, and says what is wrong in words somebody can act on. Blocking. */
final class ServiceCheck {
    private static final Set<String> LOOPBACK = Set.of("localhost", "127.0.0.1", "[::1]");

    /** Sent where no token is wanted yet; no service knows it. */
    private static final String NO_TOKEN = "none";

    private ServiceCheck() {}

    /** What is wrong. */
    static final class Wrong extends Exception {
        private static final long serialVersionUID = 1;
        private final transient Reason reason;

        Wrong(String key, String... arguments) {
            super(key);
            reason = Reason.of(key, arguments);
        }

        Reason reason() {
            return reason;
        }
    }

    /**
     * Reads an address; without a scheme it means https, on this computer http.
     *
     * @throws Wrong if it is none, or would send the token in the clear
     */
    static URI address(String typed) throws Wrong {
        String text = typed.strip();
        URI address;
        try {
            address = URI.create(text.contains("://") ? text : scheme(text) + "://" + text);
        } catch (IllegalArgumentException e) {
            throw new Wrong("setup-address-wrong", printable(text));
        }
        String scheme = address.getScheme().toLowerCase(Locale.ROOT);
        boolean bare = address.getRawQuery() == null
                && address.getRawFragment() == null
                && address.getRawUserInfo() == null
                && (address.getRawPath().isEmpty() || address.getRawPath().equals("/"));
        if (address.getHost() == null || !bare || !Set.of("http", "https").contains(scheme)) {
            throw new Wrong("setup-address-wrong", printable(text));
        }
        if (scheme.equals("http") && !LOOPBACK.contains(address.getHost().toLowerCase(Locale.ROOT))) {
            throw new Wrong("setup-address-plain", printable(text));
        }
        return URI.create(scheme + "://" + address.getRawAuthority());
    }

    private static String scheme(String text) {
        String host = text.replaceFirst("(:[0-9]+)?/?$", "").toLowerCase(Locale.ROOT);
        return LOOPBACK.contains(host) ? "http" : "https";
    }

    private static String printable(String text) {
        String clean = text.replaceAll("\\p{Cntrl}", "?");
        return clean.length() <= 60 ? clean : clean.substring(0, 59) + "\u2026";
    }

    /**
     * Looks whether a Docksweep service answers there: it refuses a request without a token in its own words.
     *
     * @throws Wrong if not
     */
    static void reach(URI address) throws Wrong {
        try {
            new ServiceClient(address, NO_TOKEN).get(ApiPaths.LIMITS, Object.class);
        } catch (ServiceProblem e) {
            if (e.type().equals(ProblemTypes.NOT_SIGNED_ON)) {
                return;
            }
            // An answer that is no JSON is told as 502 by the client.
            throw e.status() >= 500 && e.status() != 502
                    ? new Wrong("setup-service-ill", address.toString(), Integer.toString(e.status()))
                    : new Wrong("setup-not-docksweep", address.toString());
        } catch (ServiceUnreachable e) {
            throw unreachable(address, e);
        }
        throw new Wrong("setup-not-docksweep", address.toString());
    }

    private static Wrong unreachable(URI address, ServiceUnreachable e) {
        boolean plain = false;
        for (Throwable t = e.getCause(); t != null; t = t.getCause()) {
            if (t instanceof UnknownHostException || t instanceof UnresolvedAddressException) {
                return new Wrong("setup-host-unknown", address.getHost());
            }
            if (t instanceof CertificateExpiredException || t instanceof CertificateNotYetValidException) {
                return new Wrong("setup-certificate-date", address.getHost());
            }
            String words = String.valueOf(t.getMessage());
            if (words.contains("No subject alternative") || words.contains("No name matching")) {
                return new Wrong("setup-certificate-name", address.getHost());
            }
            if (words.contains("unable to find valid certification path")) {
                return new Wrong("setup-certificate-untrusted", address.getHost());
            }
            plain |= t instanceof SSLException && words.contains("plaintext connection");
        }
        if (plain) {
            return new Wrong("setup-not-tls", address.toString());
        }
        if (e.getCause() instanceof SSLException) {
            return new Wrong(
                    "setup-certificate",
                    address.getHost(),
                    String.valueOf(e.getCause().getMessage()));
        }
        boolean late = e.getCause() instanceof HttpTimeoutException;
        boolean refused = e.getCause() instanceof ConnectException;
        if (late || refused) {
            return new Wrong(late ? "setup-no-answer" : "setup-connection-refused", address.toString());
        }
        // Something answers, and not in HTTP: a service that wants TLS does so.
        return e.getCause() instanceof IOException && address.getScheme().equals("http")
                ? new Wrong("setup-not-http", address.toString())
                : new Wrong("setup-no-answer", address.toString());
    }

    /**
     * Looks whether the service takes a token, and what house it is.
     *
     * @return what the service tells a kiosk
     * @throws Wrong if it does not take it
     */
    static KioskSnapshot token(URI address, String token) throws Wrong {
        if (!token.matches("[\\x21-\\x7e]{16,512}")) {
            throw new Wrong("setup-token-wrong");
        }
        try {
            return new ServiceClient(address, token).get(ApiPaths.KIOSK_SNAPSHOT, KioskSnapshot.class);
        } catch (ServiceProblem e) {
            throw e.status() == 401
                    ? new Wrong("setup-token-refused")
                    : e.status() == 403
                            ? new Wrong("setup-token-role")
                            : new Wrong("setup-service-ill", address.toString(), Integer.toString(e.status()));
        } catch (ServiceUnreachable e) {
            throw unreachable(address, e);
        }
    }
}
