package org.docksweep.kiosk.rig;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.docksweep.fleet.Reason;
import org.docksweep.kiosk.rig.audio.AudioDevices;
import org.docksweep.kiosk.rig.audio.AudioSettings;
import org.docksweep.rigcal.CheckStandard;

/**
 * The set-up of a rig on an audio interface as a person enters it: every value is text until it is checked.
 *
 * @param values values by {@link SetUpField#key()}; other keys are passed on to the rig as they are
 */
public record RigSetUp(Map<String, String> values) {
    /** What an input can carry, as the settings name it. */
    public static final List<String> ROLES = List.of("unused", "voltage", "current", "microphone", "farMicrophone");

    private static final List<String> RATES_HZ = List.of("44100", "48000", "96000");
    private static final String UNUSED = "unused";
    /** A part of nearly the load's value could be the load itself. */
    private static final double SAME_PART = 0.05;

    public RigSetUp {
        values = Collections.unmodifiableMap(new TreeMap<>(values));
    }

    /**
     * What is wrong with a field.
     *
     * @param field the field
     * @param words in words, with what to do
     * @param blocks whether it must be put right before anything is saved
     */
    public record Problem(SetUpField field, Reason words, boolean blocks) {}

    /**
     * The set-up in settings of the audio rig, as a command line may give them.
     *
     * @param settings keys of {@link AudioSettings}
     * @return the same as fields
     */
    public static RigSetUp ofSettings(Map<String, String> settings) {
        Map<String, String> values = new HashMap<>(settings);
        for (String role : ROLES.subList(1, ROLES.size())) {
            String channel = values.remove(role + "Channel");
            if (channel != null && !channel.strip().equals("0")) {
                values.put("input" + channel.strip(), role);
            }
        }
        boolean named = settings.keySet().stream().anyMatch(key -> key.endsWith("Channel") && !key.startsWith("play"));
        if (named) {
            values.putIfAbsent("input1", settings.containsKey("voltageChannel") ? UNUSED : "voltage");
            values.putIfAbsent("input2", settings.containsKey("currentChannel") ? UNUSED : "current");
        }
        String amperes = values.remove("currentFullScale");
        if (amperes != null && !values.containsKey(SetUpField.SENSE_VOLTS.key())) {
            // One ohm makes volts of amperes; a person may say it better.
            values.put(SetUpField.SENSE_OHM.key(), "1");
            values.put(SetUpField.SENSE_VOLTS.key(), amperes);
        }
        return new RigSetUp(values);
    }

    /**
     * Value of a field.
     *
     * @param field the field
     * @return what was entered, or what is usual
     */
    public String value(SetUpField field) {
        return values.getOrDefault(field.key(), field.usual());
    }

    /**
     * The same with another value.
     *
     * @param field the field
     * @param value the value
     * @return a new set-up
     */
    public RigSetUp with(SetUpField field, String value) {
        Map<String, String> next = new HashMap<>(values);
        next.put(field.key(), value);
        return new RigSetUp(next);
    }

    /**
     * What can be chosen for a field.
     *
     * @param field a field that is no number
     * @param devices devices of this machine
     * @return the choices; for a device first the empty one, which is the first device that can
     */
    public List<String> choices(SetUpField field, List<AudioDevices.Device> devices) {
        return switch (field) {
            case PLAY_DEVICE ->
                devices(devices.stream()
                        .filter(AudioDevices.Device::playsForRig)
                        .toList());
            case CAPTURE_DEVICE ->
                devices(devices.stream()
                        .filter(AudioDevices.Device::capturesForRig)
                        .toList());
            case SAMPLE_RATE -> RATES_HZ;
            case BITS -> List.of("auto", "16", "24");
            case OUTPUT -> List.of("1", "2", "3", "4", "5", "6", "7", "8");
            case INPUT_1, INPUT_2, INPUT_3, INPUT_4 -> ROLES;
            case AMPLIFIER -> List.of("bridged", "grounded");
            default -> List.of();
        };
    }

    private static List<String> devices(List<AudioDevices.Device> able) {
        List<String> names = new ArrayList<>(List.of(""));
        able.forEach(device -> names.add(device.name()));
        return names;
    }

    /**
     * The next choice of a field.
     *
     * @param field a field that is no number
     * @param step 1 for the next one, -1 for the one before; goes round
     * @param devices devices of this machine
     * @return a new set-up
     */
    public RigSetUp chosen(SetUpField field, int step, List<AudioDevices.Device> devices) {
        List<String> choices = choices(field, devices);
        int at = choices.indexOf(value(field));
        int next = at < 0 ? 0 : Math.floorMod(at + step, choices.size());
        return with(field, choices.get(next));
    }

    /**
     * Everything that is wrong, in the order of the fields.
     *
     * @param devices devices of this machine
     * @return the problems; empty for a set-up that can be saved
     */
    public List<Problem> problems(List<AudioDevices.Device> devices) {
        List<Problem> problems = new ArrayList<>(new SetUpCheck(this, devices).problems());
        if (problems.stream().noneMatch(Problem::blocks)) {
            try {
                AudioSettings.of(rigSettings(devices));
            } catch (IllegalArgumentException e) {
                problems.add(new Problem(
                        SetUpField.OUTPUT_VOLTS,
                        Reason.of("rig-settings-wrong", String.valueOf(e.getMessage())),
                        true));
            }
        }
        return problems;
    }

    /** Input with a role, counted from 1; empty when none has it. */
    Optional<Integer> inputOf(String role) {
        for (int i = 0; i < 4; i++) {
            if (value(SetUpField.values()[SetUpField.INPUT_1.ordinal() + i]).equals(role)) {
                return Optional.of(i + 1);
            }
        }
        return Optional.empty();
    }

    int highestInput() {
        int highest = 2;
        for (int i = 0; i < 4; i++) {
            if (!value(SetUpField.values()[SetUpField.INPUT_1.ordinal() + i]).equals(UNUSED)) {
                highest = Math.max(highest, i + 1);
            }
        }
        return highest;
    }

    /**
     * Settings of the audio rig.
     *
     * @param devices devices of this machine
     * @return keys and values of {@link AudioSettings}
     * @throws IllegalArgumentException if sense resistor or its full scale is no number; {@link #problems} says so before
     */
    public Map<String, String> rigSettings(List<AudioDevices.Device> devices) {
        Map<String, String> settings = new HashMap<>(values);
        for (SetUpField field : SetUpField.values()) {
            settings.remove(field.key());
        }
        for (SetUpField field : List.of(
                SetUpField.PLAY_DEVICE,
                SetUpField.CAPTURE_DEVICE,
                SetUpField.SAMPLE_RATE,
                SetUpField.BITS,
                SetUpField.OUTPUT,
                SetUpField.OUTPUT_VOLTS,
                SetUpField.VOLTAGE_FULL_SCALE)) {
            settings.put(field.key(), value(field));
        }
        int output = Integer.parseInt(value(SetUpField.OUTPUT));
        settings.put("playChannels", Integer.toString(Math.max(least("playChannels"), output)));
        for (String role : ROLES.subList(1, ROLES.size())) {
            settings.put(role + "Channel", Integer.toString(inputOf(role).orElse(0)));
        }
        settings.put("captureChannels", Integer.toString(captureChannels(devices)));
        settings.put(
                "currentFullScale", Double.toString(number(SetUpField.SENSE_VOLTS) / number(SetUpField.SENSE_OHM)));
        for (SetUpField microphone : List.of(SetUpField.MICROPHONE_PASCALS, SetUpField.FAR_MICROPHONE_PASCALS)) {
            if (!value(microphone).isBlank()) {
                settings.put(microphone.key(), value(microphone));
            }
        }
        return settings;
    }

    /** Channels that a command line wants opened, or two. */
    private int least(String key) {
        try {
            return Integer.parseInt(values.getOrDefault(key, "2").strip());
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException(key + " must be a whole number, but is \"" + values.get(key) + "\"", e);
        }
    }

    /** Three of four channels are opened as four where that is offered: some systems join channels by their names. */
    private int captureChannels(List<AudioDevices.Device> devices) {
        int used = Math.max(least("captureChannels"), highestInput());
        boolean four = devices.stream()
                .filter(d -> d.name().equals(value(SetUpField.CAPTURE_DEVICE)))
                .anyMatch(d -> d.input().channels() >= 4);
        return used == 3 && four ? 4 : used;
    }

    /**
     * A number field.
     *
     * @param field the field
     * @return its value
     * @throws IllegalArgumentException if it is no number; names the field
     */
    public double number(SetUpField field) {
        try {
            return Double.parseDouble(value(field).strip().replace(',', '.'));
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException(field.key() + " must be a number, but is \"" + value(field) + "\"", e);
        }
    }

    /**
     * The standards of this rig.
     *
     * @return load and check standards
     * @throws IllegalArgumentException if a value is no number or not above 0
     */
    public StandardSet standards() {
        double networkOhm = number(SetUpField.NETWORK_OHM);
        double microfarad = number(SetUpField.NETWORK_MICROFARAD);
        double checkOhm = number(SetUpField.CHECK_OHM);
        // A tolerance is a rectangular distribution (JCGM 100:2008, 4.3.7).
        double relative = number(SetUpField.LOAD_TOLERANCE) / 100 / Math.sqrt(3);
        return StandardSet.of(
                number(SetUpField.LOAD_OHM),
                relative,
                CheckStandard.resistor(plain(checkOhm) + " \u03a9", checkOhm),
                new CheckStandard(
                        plain(networkOhm) + " \u03a9 \u2016 " + plain(microfarad) + " \u00b5F",
                        CheckStandard.Kind.RESISTOR_PARALLEL_CAPACITOR,
                        networkOhm,
                        microfarad * 1e-6));
    }

    /** Whether the check resistor could be the load by another name. */
    boolean checksWithTheLoad() {
        return Math.abs(number(SetUpField.CHECK_OHM) / number(SetUpField.LOAD_OHM) - 1) < SAME_PART;
    }

    static String plain(double value) {
        String text = Double.toString(value);
        return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    }
}
