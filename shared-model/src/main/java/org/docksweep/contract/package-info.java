/** REST requests, responses and paths: plain records and constants. */
package org.docksweep.contract;
