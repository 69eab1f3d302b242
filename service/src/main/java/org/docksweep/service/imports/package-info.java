/** Reading of CSV files people send: odd encodings and wrong columns are named, errors carry their line. */
package org.docksweep.service.imports;
