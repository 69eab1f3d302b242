package org.docksweep.kiosk.people;

import java.time.Duration;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.SignOn;
import org.docksweep.kiosk.service.ServiceClient;
import org.docksweep.kiosk.service.ServiceProblem;
import org.docksweep.kiosk.service.ServiceUnreachable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Asks the service whether badge and PIN belong together. Blocking. */
@FunctionalInterface
public interface SignOnOffice {
    /** Nobody stands at a locked kiosk for longer; then what is known here counts. */
    Duration PATIENCE = Duration.ofSeconds(5);

    /**
     * Signs somebody on.
     *
     * @param badge what the badge says
     * @param pin PIN as typed
     * @return who it is
     * @throws ServiceProblem if the service refuses
     * @throws ServiceUnreachable if it does not answer in time
     */
    SignOn signOn(String badge, String pin) throws ServiceProblem, ServiceUnreachable;

    /**
     * The service. The kiosk sends its records with its own token, hours later if need be, and names the person in them; the person's
     * token is of no use to it, hence it is given back at once.
     *
     * @param client way to the service, with the kiosk's token
     * @return the office
     */
    static SignOnOffice of(ServiceClient client) {
        ServiceClient patient = client.withPatience(PATIENCE);
        Logger log = LoggerFactory.getLogger(SignOnOffice.class);
        return (badge, pin) -> {
            SignOn signedOn = patient.post(ApiPaths.SIGN_ONS, new SignOn.Order(badge, pin), SignOn.class);
            try {
                patient.as(signedOn.token()).delete(ApiPaths.CURRENT_SIGN_ON);
            } catch (ServiceProblem | ServiceUnreachable e) {
                log.info("A sign-on was not ended at the service and ends by itself: {}", e.getMessage());
            }
            return signedOn;
        };
    }
}
