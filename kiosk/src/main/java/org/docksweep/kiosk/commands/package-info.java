/** Commands for the shell: headless work with exit codes. */
package org.docksweep.kiosk.commands;
