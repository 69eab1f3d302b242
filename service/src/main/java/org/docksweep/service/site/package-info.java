/** The house this service stands in. One for now; several when sites arrive. */
package org.docksweep.service.site;
