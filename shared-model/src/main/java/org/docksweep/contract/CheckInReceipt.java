package org.docksweep.contract;

import java.util.UUID;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.JobCode;

/**
 * What the service answers to a check-in once it is durable.
 *
 * @param id the check-in
 * @param status status of the cabinet now
 * @param jobCode code of the open bench job, which may be an older one of the same cabinet; null without a job
 * @param joinedOpenJob whether the cabinet already had an open job and this check-in was added to it
 */
public record CheckInReceipt(UUID id, CabinetStatus status, JobCode jobCode, boolean joinedOpenJob) {}
