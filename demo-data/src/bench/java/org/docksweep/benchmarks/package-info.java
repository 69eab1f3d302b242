/** What the gate costs on one core: benchmarks, outside the normal build. See docs/figures.md for the command. */
package org.docksweep.benchmarks;
