/** The one function everybody calls: captures and knowledge in, verdict and suspects out. */
package org.docksweep.judge;
