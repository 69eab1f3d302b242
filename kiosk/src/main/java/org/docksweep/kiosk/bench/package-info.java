/**
 * The bench at the kiosk: takes a job from the queue and serves it until sign-off. Knows no widgets; jobs live at the
 * service, and nothing is done here without it.
 */
package org.docksweep.kiosk.bench;
