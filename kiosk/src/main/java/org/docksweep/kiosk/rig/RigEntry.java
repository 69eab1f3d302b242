package org.docksweep.kiosk.rig;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.docksweep.acoustic.MicrophoneCheck;
import org.docksweep.acoustic.MicrophoneReading;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Require;
import org.docksweep.rigcal.RigCalibration;
import org.docksweep.rigcal.RigStudy;

/** Something that happened to a rig, as its {@link RigBook} keeps it for good. */
public sealed interface RigEntry {
    /**
     * When.
     *
     * @return instant
     */
    Instant at();

    /**
     * Who was signed on.
     *
     * @return name
     */
    String operator();

    /**
     * The rig was set up.
     *
     * @param at when
     * @param operator who
     * @param values settings of the rig and of its standards
     */
    record SetUp(Instant at, String operator, Map<String, String> values) implements RigEntry {
        public SetUp {
            require(at, operator);
            values = java.util.Collections.unmodifiableMap(new TreeMap<>(values));
        }
    }

    /**
     * The rig was calibrated.
     *
     * @param at when
     * @param operator who
     * @param loadOhm resistance of the load standard, in ohm
     * @param calibration what came of it
     */
    record Calibrated(Instant at, String operator, double loadOhm, RigCalibration calibration) implements RigEntry {
        public Calibrated {
            require(at, operator);
            Require.positive("loadOhm", loadOhm);
            if (calibration == null) {
                throw new IllegalArgumentException("the calibration is missing");
            }
        }
    }

    /**
     * All check standards were read.
     *
     * @param at when
     * @param operator who
     * @param readings one per standard
     */
    record Checked(Instant at, String operator, List<CheckReading> readings) implements RigEntry {
        public Checked {
            require(at, operator);
            readings = Require.notEmpty("check readings", readings);
        }

        /**
         * Whether every standard read right.
         *
         * @return true if so
         */
        public boolean passed() {
            return readings.stream().allMatch(CheckReading::passed);
        }
    }

    /**
     * The contact of the dock's plug was measured, by the short plug behind the calibration.
     *
     * @param at when
     * @param operator who
     * @param contacts pair of contacts, for example {@code 1+ / 1-}
     * @param ohm resistance beyond that at calibration, in ohm; may be a little below 0
     */
    record Contact(Instant at, String operator, String contacts, double ohm) implements RigEntry {
        public Contact {
            require(at, operator);
            Require.text("contacts", contacts);
            Require.inRange("contact ohm", ohm, -100, 100);
        }
    }

    /**
     * The dock's plug went into a cabinet that passed, and its curve told the contact.
     *
     * @param at when
     * @param operator who
     * @param tag label of the cabinet
     * @param testPointCode test point
     * @param contacts pair of contacts
     * @param ohm contact beyond what the calibration took off, in ohm
     * @param standardUncertaintyOhm its standard uncertainty, in ohm
     */
    record PlugIn(
            Instant at,
            String operator,
            AssetTag tag,
            String testPointCode,
            String contacts,
            double ohm,
            double standardUncertaintyOhm)
            implements RigEntry {
        public PlugIn {
            require(at, operator);
            if (tag == null) {
                throw new IllegalArgumentException("the label of the cabinet of a plug-in is missing");
            }
            Require.text("test point", testPointCode);
            Require.text("contacts", contacts);
            Require.inRange("contact ohm", ohm, -100, 100);
            Require.positive("contact standardUncertaintyOhm", standardUncertaintyOhm);
        }
    }

    /**
     * The repeatability of the rig was studied.
     *
     * @param at when
     * @param operator who was signed on
     * @param parts what was plugged
     * @param study what came of it
     */
    record Studied(Instant at, String operator, List<String> parts, RigStudy study) implements RigEntry {
        public Studied {
            require(at, operator);
            parts = Require.notEmpty("parts of the study", parts);
            if (study == null) {
                throw new IllegalArgumentException("the repeatability study is missing");
            }
        }
    }

    /**
     * What the microphone reads of the known cabinet was accepted; later readings are held against it.
     *
     * @param at when
     * @param operator who accepted it
     * @param tag label of the known cabinet
     * @param reading what was read
     */
    record SoundAccepted(Instant at, String operator, AssetTag tag, MicrophoneReading reading) implements RigEntry {
        public SoundAccepted {
            require(at, operator);
            if (tag == null || reading == null) {
                throw new IllegalArgumentException("the label or the reading of an accepted sound is missing");
            }
        }
    }

    /**
     * The microphone was checked with the known cabinet.
     *
     * @param at when
     * @param operator who
     * @param tag label of the known cabinet
     * @param check what came of it
     */
    record SoundChecked(Instant at, String operator, AssetTag tag, MicrophoneCheck check) implements RigEntry {
        public SoundChecked {
            require(at, operator);
            if (tag == null || check == null) {
                throw new IllegalArgumentException("the label or the result of a microphone check is missing");
            }
        }
    }

    /**
     * Both wires of the current input lay on one node.
     *
     * @param at when
     * @param operator who
     * @param ratioDb what the current input still saw of the voltage, in decibel
     */
    record CommonMode(Instant at, String operator, double ratioDb) implements RigEntry {
        public CommonMode {
            require(at, operator);
            Require.inRange("common mode ratioDb", ratioDb, -400, 400);
        }
    }

    private static void require(Instant at, String operator) {
        Require.text("operator", operator);
        if (at == null) {
            throw new IllegalArgumentException("the time of an entry of the rig book is missing");
        }
    }
}
