/** How long things last, and how sure one can be: lifetimes, survival curves, comparisons, trends, confirmed causes. */
package org.docksweep.survival;
