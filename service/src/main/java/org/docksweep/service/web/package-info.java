/** How the service speaks HTTP: refusals as problem details, paging, bounded bodies. */
package org.docksweep.service.web;
