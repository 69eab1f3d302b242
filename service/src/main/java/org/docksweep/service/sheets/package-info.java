/** Sheets for the manager: what the fleet can do. */
package org.docksweep.service.sheets;
