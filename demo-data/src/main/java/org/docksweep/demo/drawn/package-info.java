/** Cabinet models drawn from a seed: what a rental house might own, of nobody's choosing. For proving runs only. */
package org.docksweep.demo.drawn;
