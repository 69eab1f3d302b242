package org.docksweep.gate;

/**
 * How far a healthy cabinet's parameters move between two of its own measurements: ageing, temperature of suspension and
 * magnet, plug. Standard deviations of the carried quantity; common practice, no source.
 */
final class Drift {
    private Drift() {}

    /** Whether a parameter is the cabinet's own and not of the moment (contact, temperature). */
    static boolean belongsToTheCabinet(String parameterId) {
        return !parameterId.equals("contact") && !parameterId.equals("temperature");
    }

    static double of(String parameterId) {
        String quantity = parameterId.substring(parameterId.lastIndexOf('.') + 1);
        return switch (quantity) {
            case "contact" -> 0.6;
            case "temperature" -> 10;
            case "Re", "winding" -> 0.01;
            case "value" -> 0.012;
            case "n" -> 0.01;
            case "K" -> 0.03;
            // Suspensions stiffen in the cold and soften with use.
            case "fs" -> 0.06;
            case "Qms", "QL" -> 0.12;
            case "Z0" -> 0.03;
            case "esr" -> 0.3;
            case "stiffness", "tuning" -> 0.02;
            default -> quantity.startsWith("f") ? 0.03 : 0.08;
        };
    }
}
