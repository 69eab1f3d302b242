package org.docksweep.kiosk.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.docksweep.fleet.Reason;
import org.docksweep.kiosk.rig.RigSetUp.Problem;
import org.docksweep.kiosk.rig.audio.AudioDevices;

/** Looks a set-up over, field by field, and says in words what is wrong. */
final class SetUpCheck {
    private final RigSetUp setUp;
    private final List<AudioDevices.Device> devices;
    private final List<Problem> problems = new ArrayList<>();

    SetUpCheck(RigSetUp setUp, List<AudioDevices.Device> devices) {
        this.setUp = setUp;
        this.devices = devices;
    }

    List<Problem> problems() {
        device(SetUpField.PLAY_DEVICE);
        device(SetUpField.CAPTURE_DEVICE);
        boolean twoClocks = !setUp.value(SetUpField.PLAY_DEVICE).equals(setUp.value(SetUpField.CAPTURE_DEVICE));
        if (twoClocks) {
            add(SetUpField.CAPTURE_DEVICE, false, "rigpage-two-clocks");
        }
        format();
        roles();
        number(SetUpField.OUTPUT_VOLTS, 0, 200);
        number(SetUpField.VOLTAGE_FULL_SCALE, 0, 1000);
        number(SetUpField.SENSE_OHM, 0, 100);
        number(SetUpField.SENSE_VOLTS, 0, 1000);
        microphone("microphone", SetUpField.MICROPHONE_PASCALS);
        microphone("farMicrophone", SetUpField.FAR_MICROPHONE_PASCALS);
        standards();
        problems.sort(java.util.Comparator.comparing(Problem::field));
        return problems;
    }

    private void add(SetUpField field, boolean blocks, String key, String... arguments) {
        problems.add(new Problem(field, Reason.of(key, arguments), blocks));
    }

    private Optional<AudioDevices.Device> named(SetUpField field) {
        return devices.stream().filter(d -> d.name().equals(setUp.value(field))).findFirst();
    }

    private void device(SetUpField field) {
        String name = setUp.value(field);
        boolean play = field == SetUpField.PLAY_DEVICE;
        if (devices.stream().noneMatch(d -> play ? d.playsForRig() : d.capturesForRig())) {
            add(field, true, play ? "rigpage-no-output" : "rigpage-no-input");
        } else if (!name.isEmpty() && named(field).isEmpty()) {
            add(field, true, "rigpage-device-gone", name);
        }
    }

    private void format() {
        String rate = setUp.value(SetUpField.SAMPLE_RATE);
        String bits = setUp.value(SetUpField.BITS);
        named(SetUpField.PLAY_DEVICE).ifPresent(d -> format(d.name(), d.output(), rate, bits));
        if (problems.stream().noneMatch(p -> p.field() == SetUpField.SAMPLE_RATE || p.field() == SetUpField.BITS)) {
            named(SetUpField.CAPTURE_DEVICE).ifPresent(d -> format(d.name(), d.input(), rate, bits));
        }
        named(SetUpField.PLAY_DEVICE).ifPresent(d -> {
            int channels = d.output().channels();
            if (Integer.parseInt(setUp.value(SetUpField.OUTPUT)) > channels) {
                add(SetUpField.OUTPUT, true, "rigpage-output-missing", d.name(), Integer.toString(channels));
            }
        });
        named(SetUpField.CAPTURE_DEVICE).ifPresent(d -> {
            int channels = d.input().channels();
            if (setUp.highestInput() > channels) {
                SetUpField field = SetUpField.values()[SetUpField.INPUT_1.ordinal() + setUp.highestInput() - 1];
                add(field, true, "rigpage-input-missing", d.name(), Integer.toString(channels));
            }
        });
    }

    private void format(String device, AudioDevices.Offer offer, String rate, String bits) {
        boolean rateKnown = !offer.sampleRatesHz().isEmpty();
        if (rateKnown && !offer.sampleRatesHz().contains(Integer.parseInt(rate))) {
            add(SetUpField.SAMPLE_RATE, true, "rigpage-rate-not-offered", device, rate);
        }
        boolean wide = bits.equals("24") && offer.bits().stream().noneMatch(b -> b >= 24);
        if (wide || bits.equals("16") && !offer.bits().contains(16)) {
            add(SetUpField.BITS, true, "rigpage-bits-not-offered", device, bits);
        }
    }

    private void roles() {
        for (int i = 0; i < 4; i++) {
            SetUpField field = SetUpField.values()[SetUpField.INPUT_1.ordinal() + i];
            String role = setUp.value(field);
            Optional<Integer> first = setUp.inputOf(role);
            if (!role.equals("unused") && first.isPresent() && first.get() != i + 1) {
                add(field, true, "rigpage-role-twice-" + role, Integer.toString(first.get()), Integer.toString(i + 1));
            }
        }
        for (String needed : List.of("voltage", "current")) {
            if (setUp.inputOf(needed).isEmpty()) {
                add(
                        needed.equals("voltage") ? SetUpField.INPUT_1 : SetUpField.INPUT_2,
                        true,
                        "rigpage-role-missing-" + needed);
            }
        }
    }

    private void microphone(String role, SetUpField scale) {
        if (setUp.inputOf(role).isPresent()) {
            number(scale, 0, 1e6);
        }
    }

    private boolean number(SetUpField field, double above, double highest) {
        String text = setUp.value(field);
        if (text.isBlank()) {
            add(field, true, "rigpage-number-missing");
            return false;
        }
        double value;
        try {
            value = setUp.number(field);
        } catch (IllegalArgumentException e) {
            add(field, true, "rigpage-not-a-number", text);
            return false;
        }
        if (!(value > above && value <= highest)) {
            add(field, true, "rigpage-number-range", text, RigSetUp.plain(above), RigSetUp.plain(highest));
            return false;
        }
        return true;
    }

    private void standards() {
        boolean load = number(SetUpField.LOAD_OHM, 0.5, 1000);
        number(SetUpField.LOAD_TOLERANCE, 0, 2);
        boolean check = number(SetUpField.CHECK_OHM, 0.5, 1000);
        number(SetUpField.NETWORK_OHM, 0.5, 1000);
        number(SetUpField.NETWORK_MICROFARAD, 0, 1000);
        if (load && check && setUp.checksWithTheLoad()) {
            add(SetUpField.CHECK_OHM, true, "rigpage-check-is-load", setUp.value(SetUpField.LOAD_OHM));
        }
    }
}
