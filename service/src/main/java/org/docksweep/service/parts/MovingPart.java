package org.docksweep.service.parts;

import java.time.LocalDate;
import org.docksweep.fleet.PartSource;

/**
 * The moving part in a driver.
 *
 * @param partNumber part number, or null when not known
 * @param serial serial, or null
 * @param source source, or null when not known
 * @param fittedOn day it was fitted, or null when not known
 */
public record MovingPart(String partNumber, String serial, PartSource source, LocalDate fittedOn) {}
