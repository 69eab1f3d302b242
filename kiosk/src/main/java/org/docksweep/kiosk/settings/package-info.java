/** What a kiosk keeps about itself, in files that only their owner can read. */
package org.docksweep.kiosk.settings;
