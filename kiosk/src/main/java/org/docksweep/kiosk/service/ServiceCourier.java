package org.docksweep.kiosk.service;

import java.io.IOException;
import java.net.http.HttpConnectTimeoutException;
import java.net.http.HttpTimeoutException;
import java.nio.file.Path;
import java.security.cert.CertificateException;
import javax.net.ssl.SSLException;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.kiosk.spool.Courier;
import org.docksweep.kiosk.spool.Delivery;
import org.docksweep.kiosk.spool.OutboxItem;
import org.docksweep.kiosk.spool.Trouble;

/** Carries records of the outbox to the service. */
public final class ServiceCourier implements Courier {
    private final ServiceClient client;
    private final RecordingArchives recordings;

    /** Finds recordings in the kiosk's folder. */
    @FunctionalInterface
    public interface RecordingArchives {
        /**
         * A recording, as its archive.
         *
         * @param sha256 content hash of the recording
         * @return path of the archive
         * @throws IOException if the recording is not there, was changed, or cannot be read
         */
        Path checked(String sha256) throws IOException;
    }

    /**
     * Makes a courier.
     *
     * @param client way to the service
     * @param recordings finds recordings
     */
    public ServiceCourier(ServiceClient client, RecordingArchives recordings) {
        this.client = client;
        this.recordings = recordings;
    }

    @Override
    public Delivery deliver(OutboxItem item) {
        try {
            send(item);
            return new Delivery.Delivered();
        } catch (ServiceUnreachable e) {
            return new Delivery.NotNow(e.getMessage(), trouble(e));
        } catch (ServiceProblem e) {
            boolean alreadyClosed =
                    item.kind() == OutboxItem.Kind.CLOSE && e.type().equals(ProblemTypes.WRONG_STATE);
            if (alreadyClosed) {
                return new Delivery.Delivered();
            }
            return e.mayPass() ? new Delivery.NotNow(e.getMessage(), trouble(e)) : new Delivery.Refused(e.getMessage());
        } catch (IOException e) {
            return new Delivery.Refused("the recording cannot be read at this kiosk: " + e.getMessage());
        }
    }

    private static Trouble trouble(ServiceProblem e) {
        return switch (e.status()) {
            case 401, 403 -> Trouble.NOT_SIGNED_ON;
            case 408, 425, 429, 503 -> Trouble.BUSY;
            default -> Trouble.FAULTY;
        };
    }

    private static Trouble trouble(ServiceUnreachable e) {
        for (Throwable cause = e.getCause(); cause != null; cause = cause.getCause()) {
            if (cause instanceof SSLException || cause instanceof CertificateException) {
                return Trouble.NOT_TRUSTED;
            }
            if (cause instanceof HttpTimeoutException && !(cause instanceof HttpConnectTimeoutException)) {
                return Trouble.SLOW;
            }
        }
        return Trouble.UNREACHABLE;
    }

    private void send(OutboxItem item) throws ServiceProblem, ServiceUnreachable, IOException {
        switch (item.kind()) {
            case RECORDING -> {
                String sha256 = item.path().substring(item.path().lastIndexOf('/') + 1);
                client.putFile(item.path(), "application/zip", recordings.checked(sha256));
            }
            case CLOSE -> client.post(item.path());
            case REGISTRATION, COMMISSIONING, CHECK_IN -> client.putBytes(item.path(), "application/json", item.body());
        }
    }
}
