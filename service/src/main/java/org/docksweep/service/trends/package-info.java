/** Where single units are going: readings from return to return, and the watch list of those on their way out. */
package org.docksweep.service.trends;
