package org.docksweep.contract;

import java.util.List;
import org.docksweep.fleet.ModelBook;
import org.docksweep.gate.PointReference;

/**
 * What known-good units taught: stored as a whole or not at all.
 *
 * @param book the cabinet model with its drivers, when it is new or its drawing was fitted to the units; or null
 * @param newModel whether the code of the model must not be taken yet
 * @param references one for every test point of the model
 */
public record LessonBody(ModelBook book, boolean newModel, List<PointReference> references) {}
