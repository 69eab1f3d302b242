/** Teaching models from known-good units: what the fleet page shows and does, without widgets. */
package org.docksweep.kiosk.teaching;
