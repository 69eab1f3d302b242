/** What is booked out, and whether it can be met: the source of need dates. */
package org.docksweep.service.dispatches;
