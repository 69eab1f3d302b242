/** Procedure cards: generic steps with the numbers of a driver model, which are data of the house. */
package org.docksweep.service.procedures;
