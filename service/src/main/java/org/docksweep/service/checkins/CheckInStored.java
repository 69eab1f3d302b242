package org.docksweep.service.checkins;

import org.docksweep.contract.CheckInBody;

/**
 * Said within the transaction that stores a new check-in; what listeners write is stored with it or not at all.
 *
 * @param body the check-in as stored
 */
public record CheckInStored(CheckInBody body) {}
