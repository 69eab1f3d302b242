package org.docksweep.gate;

/**
 * How far a healthy cabinet's parameters move between two of its own measurements: ageing, temperature of suspension and
 * magnet, plug. Standard deviations of the carried quantity; common practice, no source.
 */
final class Drift {
    private Drift() {}

    /** Whether a parameter is the cabinet's own and not of the moment (contact, temperature). */
    static boolean belongsToTheCabinet(String parameterId) {
        return !parameterId.equals("contact") && !parameterId.equals("temperature") && !parameterId.equals("climate");
    }

    static double of(String parameterId) {
        String quantity = parameterId.substring(parameterId.lastIndexOf('.') + 1);
        return switch (quantity) {
            case "contact" -> 0.08;
            case "temperature" -> 5;
            case "climate" -> 8;
            case "Re" -> 0.006;
            case "winding" -> 0.015;
            case "value" -> 0.006;
            case "n" -> 0.003;
            case "K" -> 0.01;
            // Suspensions soften with use and recover; the body's temperature is a parameter of its own.
            case "fs" -> 0.012;
            case "Qms" -> 0.05;
            case "QL" -> 0.07;
            case "Z0" -> 0.012;
            case "esrOhm" -> 0.02;
            case "stiffness" -> 0.012;
            case "tuning" -> 0.006;
            case "creep" -> 0.002;
            case "friction" -> 0.002;
            // f, Q, Z of a horn driver's resonances
            default -> quantity.startsWith("f") ? 0.01 : quantity.startsWith("Z") ? 0.012 : 0.03;
        };
    }
}
