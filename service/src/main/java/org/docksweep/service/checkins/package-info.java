/** Check-ins: one cabinet, one return; stored once, whatever the network does. */
package org.docksweep.service.checkins;
