package org.docksweep.kiosk.rig.audio;

import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** Reads settings one by one, and knows which were never asked for. */
final class SettingsReader {
    private final Map<String, String> settings;
    private final Set<String> known = new TreeSet<>();

    SettingsReader(Map<String, String> settings) {
        this.settings = settings;
    }

    boolean has(String key) {
        known.add(key);
        return settings.containsKey(key);
    }

    String text(String key, String otherwise) {
        return has(key) ? settings.get(key).strip() : otherwise;
    }

    double number(String key) {
        if (!has(key)) {
            throw new IllegalArgumentException("setting " + key + " of the audio rig is missing");
        }
        try {
            return Double.parseDouble(settings.get(key).strip());
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException(
                    "setting " + key + " of the audio rig must be a number, but is \"" + settings.get(key) + "\"", e);
        }
    }

    double number(String key, double otherwise) {
        return has(key) ? number(key) : otherwise;
    }

    int whole(String key, int otherwise) {
        double value = number(key, otherwise);
        if (value != Math.rint(value) || Math.abs(value) > 1e6) {
            throw new IllegalArgumentException(
                    "setting " + key + " of the audio rig must be a whole number, but is " + settings.get(key));
        }
        return (int) value;
    }

    void refuseOthers() {
        for (String key : settings.keySet()) {
            if (!known.contains(key)) {
                throw new IllegalArgumentException(
                        "setting " + key + " of the audio rig is not known; expected one of " + known);
            }
        }
    }
}
