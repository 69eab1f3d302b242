/**
 * Proving runs: virtual returns whose truth is known go through the whole path from capture to verdict, and what came out
 * is counted.
 */
package org.docksweep.kiosk.proving;
