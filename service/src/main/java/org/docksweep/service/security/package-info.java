/** Who may do what: bearer tokens of kiosks, kept as hashes. People sign on in {@code people}. */
package org.docksweep.service.security;
