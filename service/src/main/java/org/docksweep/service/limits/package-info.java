/** Tries limits on what was measured, before they go live. Stores nothing. */
package org.docksweep.service.limits;
