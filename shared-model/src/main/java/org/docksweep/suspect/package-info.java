/** Fault hypotheses enumerated from the network and their ranking. */
package org.docksweep.suspect;
