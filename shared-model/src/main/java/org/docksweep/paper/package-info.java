/** Repair tag and sheets as PDF documents: the same on kiosk and service. */
package org.docksweep.paper;
