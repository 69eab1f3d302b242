/** Who may do what: bearer tokens of kiosks, kept as hashes. People with badge and PIN will sign on here as well. */
package org.docksweep.service.security;
