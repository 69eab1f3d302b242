/** Everything out and in again: export, backup, restore, and the check of the recordings. */
package org.docksweep.service.backup;
