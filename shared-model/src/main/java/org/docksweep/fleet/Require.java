package org.docksweep.fleet;

import java.util.List;

/** Range checks, written so that NaN fails, that name the thing and what was expected. */
public final class Require {
    private Require() {}

    /**
     * Returns the value if it is finite and greater than zero.
     *
     * @param name what the value is, with its unit
     * @param value the value
     * @return the value
     * @throws IllegalArgumentException if it is zero, negative, infinite or NaN
     */
    public static double positive(String name, double value) {
        if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(name + " must be a finite number greater than 0, but is " + value);
        }
        return value;
    }

    /**
     * Returns the value if it is finite and at least zero.
     *
     * @param name what the value is, with its unit
     * @param value the value
     * @return the value
     * @throws IllegalArgumentException if it is negative, infinite or NaN
     */
    public static double notNegative(String name, double value) {
        if (!(value >= 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(name + " must be a finite number of at least 0, but is " + value);
        }
        return value;
    }

    /**
     * Returns the value if it lies in a closed range.
     *
     * @param name what the value is, with its unit
     * @param value the value
     * @param lowest lowest accepted value (included)
     * @param highest highest accepted value (included)
     * @return the value
     * @throws IllegalArgumentException if it is outside or NaN
     */
    public static double inRange(String name, double value, double lowest, double highest) {
        if (!(value >= lowest && value <= highest)) {
            throw new IllegalArgumentException(
                    name + " must be from " + lowest + " to " + highest + " (both allowed), but is " + value);
        }
        return value;
    }

    /**
     * Returns the text if it has something in it.
     *
     * @param name what the text is
     * @param text the text
     * @return the text
     * @throws IllegalArgumentException if it is null or blank
     */
    public static String text(String name, String text) {
        if (text == null || text.isBlank()) {
            throw new IllegalArgumentException(name + " must not be empty");
        }
        return text;
    }

    /**
     * Returns an unmodifiable copy of a list.
     *
     * @param name what the list holds
     * @param list the list, or null for an empty one
     * @param <T> element type
     * @return the copy, never null
     */
    public static <T> List<T> copy(String name, List<T> list) {
        if (list == null) {
            return List.of();
        }
        if (list.stream().anyMatch(java.util.Objects::isNull)) {
            throw new IllegalArgumentException(name + " must not contain an empty entry");
        }
        return List.copyOf(list);
    }

    /**
     * Returns an unmodifiable copy of a list that must not be empty.
     *
     * @param name what the list holds
     * @param list the list
     * @param <T> element type
     * @return the copy, never null or empty
     * @throws IllegalArgumentException if it is null or empty
     */
    public static <T> List<T> notEmpty(String name, List<T> list) {
        List<T> copy = copy(name, list);
        if (copy.isEmpty()) {
            throw new IllegalArgumentException(name + " must hold at least one entry");
        }
        return copy;
    }
}
