/** The set-up walk: one step after the other, each checked, everything stored at the end or nothing. Knows no widgets. */
package org.docksweep.kiosk.setup;
