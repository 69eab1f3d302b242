package org.docksweep.kiosk.teaching;

import java.util.List;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.LessonBody;
import org.docksweep.contract.SignOn;
import org.docksweep.contract.TaughtPoint;
import org.docksweep.kiosk.service.ServiceClient;
import org.docksweep.kiosk.service.ServiceProblem;
import org.docksweep.kiosk.service.ServiceUnreachable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** What the fleet page asks of the service. Blocking. */
final class TeachingOffice {
    private static final Logger LOG = LoggerFactory.getLogger(TeachingOffice.class);

    private final ServiceClient client;

    TeachingOffice(ServiceClient client) {
        this.client = client;
    }

    List<TaughtPoint> taught() throws ServiceProblem, ServiceUnreachable {
        return List.of(client.get(ApiPaths.LESSONS, TaughtPoint[].class));
    }

    /** Hands a lesson in as the person of a badge: signed on for this one request, and off again. */
    SignOn handIn(String badge, String pin, String modelCode, LessonBody lesson)
            throws ServiceProblem, ServiceUnreachable {
        SignOn signedOn = client.post(ApiPaths.SIGN_ONS, new SignOn.Order(badge, pin), SignOn.class);
        ServiceClient person = client.as(signedOn.token());
        try {
            person.put(ApiPaths.LESSONS + "/" + modelCode, lesson);
        } finally {
            signOff(person);
        }
        return signedOn;
    }

    /** Failing here undoes nothing: the service ends the sign-on by itself. */
    private static void signOff(ServiceClient person) {
        try {
            person.delete(ApiPaths.CURRENT_SIGN_ON);
        } catch (ServiceProblem | ServiceUnreachable e) {
            LOG.info("The sign-on was not ended at the service and ends by itself: {}", e.getMessage());
        }
    }
}
