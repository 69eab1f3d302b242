package org.docksweep.contract;

import java.time.LocalDate;

/**
 * The periodic electrical safety test of a powered cabinet. Local rules say who tests what and how often; this is a reminder of the
 * day and never replaces the test.
 *
 * @param dueOn day the next test is due, or null when none is to be reminded of
 */
public record SafetyTest(LocalDate dueOn) {}
