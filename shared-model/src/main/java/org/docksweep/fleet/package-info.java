/** Fleet vocabulary: immutable records both sides agree on. Sees nothing else of the house. */
package org.docksweep.fleet;
