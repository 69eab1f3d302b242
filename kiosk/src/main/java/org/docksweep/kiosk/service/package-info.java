/** The way to the service: HTTP client, and the service as a child process for the demo. */
package org.docksweep.kiosk.service;
