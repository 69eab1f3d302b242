/** Tells boards on the wall and pages of kiosks that something changed, as server-sent events or asked for. */
package org.docksweep.service.board;
