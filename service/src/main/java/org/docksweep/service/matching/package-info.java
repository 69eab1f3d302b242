/** Cabinets that agree best, for a stereo pair or an array. */
package org.docksweep.service.matching;
