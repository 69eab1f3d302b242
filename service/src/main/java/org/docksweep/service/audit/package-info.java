/** Log of what was done and refused: by whom, from which kiosk, when. Written in the transaction it tells of. */
package org.docksweep.service.audit;
