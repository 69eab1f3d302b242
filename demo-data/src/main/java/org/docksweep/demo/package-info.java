/**
 * The demo house: Marram Coast Hire, its invented cabinets, people, lists and history. Everything comes from a seed. A
 * witness for the gate, so nothing here knows how the gate measures or judges.
 */
package org.docksweep.demo;
