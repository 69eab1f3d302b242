/** What kiosks need to work without a network. Delta sync arrives here. */
package org.docksweep.service.kiosks;
