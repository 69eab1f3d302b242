/** Parts: catalogue, single pieces, stock moves, what fits where, and what to order. */
package org.docksweep.service.parts;
