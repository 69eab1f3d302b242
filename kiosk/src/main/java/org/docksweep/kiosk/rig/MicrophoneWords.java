package org.docksweep.kiosk.rig;

import java.util.Locale;
import org.docksweep.acoustic.MicrophoneCheck;
import org.docksweep.fleet.Reason;

/** A microphone check in words, with what to do. */
final class MicrophoneWords {
    private MicrophoneWords() {}

    static Reason of(MicrophoneCheck check) {
        return switch (check.fault()) {
            case NONE ->
                Reason.of("mic-good", decibel(check.gainDb()), decibel(check.shapeDb()), centimetres(check.movedM()));
            case UNHEARD -> Reason.of("mic-unheard");
            case MOVED ->
                Reason.of(check.movedM() > 0 ? "mic-farther" : "mic-nearer", centimetres(Math.abs(check.movedM())));
            case CAPSULE -> Reason.of("mic-capsule", decibel(check.shapeDb()), hertz(check.shapeHz()));
            case GAIN -> Reason.of("mic-gain", decibel(check.gainDb()));
            case NOISE -> Reason.of("mic-noise", decibel(check.noiseDb()));
        };
    }

    private static String decibel(double value) {
        return String.format(Locale.ROOT, "%+.1f dB", value == 0 ? 0.0 : value).replace('-', '\u2212');
    }

    private static String centimetres(double metres) {
        return Long.toString(Math.round(100 * metres)).replace('-', '\u2212');
    }

    private static String hertz(double frequencyHz) {
        return Long.toString(Math.round(frequencyHz));
    }
}
