/** Who is signed on at the kiosk: badge and PIN, with the service and without it, and the lock. Knows no widgets. */
package org.docksweep.kiosk.people;
