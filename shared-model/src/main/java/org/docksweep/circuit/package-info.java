/** Networks of R, L, C and drivers by nodal analysis; the lumped driver in its box. */
package org.docksweep.circuit;
