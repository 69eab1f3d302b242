/** The OpenAPI description beyond what the controllers say by themselves: refusals, statuses, examples. */
package org.docksweep.service.description;
