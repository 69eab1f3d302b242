/** How long parts last, by driver model and source: counted from lives on record, never stored. */
package org.docksweep.service.reliability;
