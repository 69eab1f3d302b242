/** Lives put together from what other features keep: cabinets, positions, driver units, diaphragms, jobs. */
package org.docksweep.service.histories;
