package org.docksweep.kiosk.service;

import java.io.IOException;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.kiosk.spool.Courier;
import org.docksweep.kiosk.spool.Delivery;
import org.docksweep.kiosk.spool.OutboxItem;

/** Carries records of the outbox to the service. */
public final class ServiceCourier implements Courier {
    private final ServiceClient client;
    private final RecordingArchives recordings;

    /** Reads recordings of the kiosk's folder. */
    @FunctionalInterface
    public interface RecordingArchives {
        /**
         * A recording, as its archive.
         *
         * @param sha256 content hash of the recording
         * @return bytes of the archive
         * @throws IOException if the recording is not there or cannot be read
         */
        byte[] bytes(String sha256) throws IOException;
    }

    /**
     * Makes a courier.
     *
     * @param client way to the service
     * @param recordings reads recordings
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
            return new Delivery.NotNow(e.getMessage(), false);
        } catch (ServiceProblem e) {
            boolean alreadyClosed =
                    item.kind() == OutboxItem.Kind.CLOSE && e.type().equals(ProblemTypes.WRONG_STATE);
            if (alreadyClosed) {
                return new Delivery.Delivered();
            }
            return e.mayPass() ? new Delivery.NotNow(e.getMessage(), true) : new Delivery.Refused(e.getMessage());
        } catch (IOException e) {
            return new Delivery.Refused("the recording cannot be read at this kiosk: " + e.getMessage());
        }
    }

    private void send(OutboxItem item) throws ServiceProblem, ServiceUnreachable, IOException {
        switch (item.kind()) {
            case RECORDING -> {
                String sha256 = item.path().substring(item.path().lastIndexOf('/') + 1);
                client.putBytes(item.path(), "application/zip", recordings.bytes(sha256));
            }
            case CLOSE -> client.post(item.path());
            case REGISTRATION, COMMISSIONING, CHECK_IN -> client.putBytes(item.path(), "application/json", item.body());
        }
    }
}
