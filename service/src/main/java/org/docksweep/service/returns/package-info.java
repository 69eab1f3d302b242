/** Return lists: what is due back, what came, what is missing. */
package org.docksweep.service.returns;
