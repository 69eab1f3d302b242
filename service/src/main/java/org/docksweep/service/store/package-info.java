/** What every feature needs to keep things: rows with client-made keys, JSON columns, retries, durable answers. */
package org.docksweep.service.store;
