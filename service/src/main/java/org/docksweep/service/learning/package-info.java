/** What the gate learns from confirmed causes: visible, reversible, computed anew from what was found. */
package org.docksweep.service.learning;
