/** What the microphone hears of a sweep: levels, polarity, distortion by order, rubs and buzzes. */
package org.docksweep.acoustic;
