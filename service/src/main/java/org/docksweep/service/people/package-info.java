/** People: badge, PIN and role, and their sign-ons at kiosks. */
package org.docksweep.service.people;
