/** What is kept how long: curves and recordings go after their time, everything else stays. And the partitions by month. */
package org.docksweep.service.retention;
