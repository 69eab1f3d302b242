/** References, limits, guard bands, findings. */
package org.docksweep.gate;
