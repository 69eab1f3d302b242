/** Bench jobs: opened by check-ins, at most one open per cabinet, found by every code ever printed for them. */
package org.docksweep.service.bench;
