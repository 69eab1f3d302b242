package org.docksweep.kiosk.rig;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.dock.Gate;
import org.docksweep.kiosk.rig.audio.AudioDevices;
import org.docksweep.kiosk.rig.audio.AudioLevels;
import org.docksweep.rigcal.RigCalibration;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.PracticeRig;
import org.docksweep.sweep.Rig;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepPlan;

/**
 * A rig with its book: opened as it was last set up, calibrated as the book says. A practice rig without a check of this
 * shift calibrates and checks itself.
 */
public final class RigStation implements AutoCloseable {
    private static final String AUDIO = "audio";

    private final Rig rig;
    private final RigBook book;
    private final RigSetUp setUp;
    private final ChangeableRig changeable;
    private final Supplier<String> signedOn;
    private final Clock clock;

    private RigStation(
            Rig rig, RigBook book, RigSetUp setUp, ChangeableRig changeable, Supplier<String> signedOn, Clock clock) {
        this.rig = rig;
        this.book = book;
        this.setUp = setUp;
        this.changeable = changeable;
        this.signedOn = signedOn;
        this.clock = clock;
    }

    /**
     * Opens a rig and its book. Settings given here count more than stored ones and are stored as a new set-up where they
     * differ. An audio rig that was never set up opens all the same, and refuses to measure until it is.
     *
     * @param folder folder of the rig books
     * @param name name of the rig's provider
     * @param settings settings of that provider
     * @param signedOn who is signed on now; asked whenever something is written into the book
     * @param clock time
     * @return the open station
     * @throws RigException if the rig refuses its settings
     * @throws IOException if the book cannot be opened
     */
    public static RigStation open(
            Path folder, String name, Map<String, String> settings, Supplier<String> signedOn, Clock clock)
            throws RigException, IOException {
        if (!name.equals(AUDIO)) {
            Rig rig = Rigs.open(name, settings);
            try {
                return new RigStation(
                        rig, RigBook.open(folder, rig.id()), new RigSetUp(Map.of()), null, signedOn, clock);
            } catch (IOException | RuntimeException e) {
                rig.close();
                throw e;
            }
        }
        RigBook book = RigBook.open(folder, settings.getOrDefault("id", AUDIO).strip());
        try {
            Map<String, String> stored = book.newest(RigEntry.SetUp.class)
                    .map(RigEntry.SetUp::values)
                    .orElse(Map.of());
            RigSetUp setUp = setUp(stored, settings);
            ChangeableRig rig = new ChangeableRig(audio(setUp, settings));
            if (!setUp.values().equals(stored)) {
                // Only what the rig has taken.
                book.append(new RigEntry.SetUp(clock.instant(), signedOn.get(), setUp.values()));
            }
            return new RigStation(rig, book, setUp, rig, signedOn, clock);
        } catch (IOException | RigException | RuntimeException e) {
            book.close();
            throw e;
        }
    }

    private static RigSetUp setUp(Map<String, String> stored, Map<String, String> settings) {
        Map<String, String> values = new HashMap<>(stored);
        values.putAll(RigSetUp.ofSettings(settings).values());
        return new RigSetUp(values);
    }

    private static Rig audio(RigSetUp setUp, Map<String, String> settings) throws RigException {
        boolean usable = setUp.problems(List.of()).stream()
                .noneMatch(p ->
                        p.blocks() && p.field() != SetUpField.PLAY_DEVICE && p.field() != SetUpField.CAPTURE_DEVICE);
        if (usable) {
            // The devices are looked for at every measurement.
            return Rigs.open(AUDIO, setUp.rigSettings(AudioDevices.list()));
        }
        if (!settings.isEmpty()) {
            // Somebody meant these; the provider says best what is wrong.
            return Rigs.open(AUDIO, settings);
        }
        return new UnsetRig();
    }

    /**
     * The rig.
     *
     * @return the rig, which may change behind this
     */
    public Rig rig() {
        return rig;
    }

    /**
     * The book.
     *
     * @return the book
     */
    public RigBook book() {
        return book;
    }

    /**
     * Whether the rig may play through an output of this computer.
     *
     * @param output name of the output
     * @return true when the set-up in force names it, or names none
     */
    public boolean playsThrough(String output) {
        if (changeable == null) {
            return false;
        }
        String device = book.newest(RigEntry.SetUp.class)
                .map(s -> s.values().getOrDefault(SetUpField.PLAY_DEVICE.key(), ""))
                .orElse("");
        return output.toLowerCase(Locale.ROOT).contains(device.strip().toLowerCase(Locale.ROOT));
    }

    /**
     * How the rig stands.
     *
     * @param zone zone of the site
     * @return asked anew every time
     */
    public RigStandings standings(ZoneId zone) {
        return new RigStandings(book, clock, zone);
    }

    /**
     * Lets a practice rig without a valid check calibrate and check itself, and its microphone; does nothing with any other rig.
     *
     * @param gate measurement
     * @param zone zone of the site
     * @throws RigException if the rig cannot measure a standard
     * @throws IOException if the book cannot be written
     */
    public void practise(Gate gate, ZoneId zone) throws RigException, IOException {
        if (!(rig instanceof PracticeRig practice)) {
            return;
        }
        if (standings(zone).get().state() == ReadingState.FAULT) {
            StandardSet standards = StandardSet.practice();
            RigDay.Result day = new RigDay(practice, gate, standards, clock).calibrateAndCheck(zone);
            book.append(new RigEntry.Calibrated(
                    day.calibration().takenAt(), signedOn.get(), standards.loadOhm(), day.calibration()));
            book.append(new RigEntry.Checked(clock.instant(), signedOn.get(), day.readings()));
        }
        Optional<RigEntry.Calibrated> calibrated = book.calibrationInForce();
        if (calibrated.isPresent() && standings(zone).get().microphoneDoubt().isPresent()) {
            hear(practice, gate, book, signedOn, clock, calibrated.get().calibration());
        }
    }

    /**
     * Sweeps the known cabinet of a practice rig: its microphone is accepted once and held against that at every later check.
     *
     * @param practice rig
     * @param gate measurement
     * @param book where what was heard is entered
     * @param signedOn name of the person
     * @param clock now
     * @param calibration calibration in force
     * @throws RigException if the rig cannot sweep
     * @throws IOException if the book cannot be written
     */
    public static void hear(
            PracticeRig practice,
            Gate gate,
            RigBook book,
            Supplier<String> signedOn,
            Clock clock,
            RigCalibration calibration)
            throws RigException, IOException {
        StudyCabinet known = StandardSet.PRACTICE_CABINET;
        SoundWalk walk = new SoundWalk(book, signedOn, clock, calibration, Optional.of(known));
        walk.plug(StandardsHand.of(practice, StandardSet.practice()), Lead.of(practice));
        SweepPlan plan = gate.sweep(known.point(), practice.sampleRateHz());
        walk.take(List.of(gate.analyse(practice.play(plan, known.point().kind(), share -> {}))));
    }

    /**
     * What is behind the rig page.
     *
     * @param zone zone of the site
     * @param cabinets finds cabinets for a repeatability study
     * @return a new desk; to be closed before this
     */
    public RigDesk desk(ZoneId zone, StudyCabinet.Finder cabinets) {
        boolean practice = rig instanceof PracticeRig;
        return new RigDesk(new RigDeskParts(
                rig,
                book,
                standings(zone),
                practice ? StandardsHand.of((PracticeRig) rig, StandardSet.practice()) : StandardsHand.PERSON,
                setUp,
                practice ? any -> StandardSet.practice() : RigSetUp::standards,
                changeable == null ? null : this::change,
                changeable == null ? (any, tone) -> LevelSource.ofProbes(rig) : RigStation::levels,
                AudioDevices::list,
                signedOn,
                clock,
                cabinets));
    }

    private void change(RigSetUp next) throws RigException {
        changeable.change(Rigs.open(AUDIO, next.rigSettings(AudioDevices.list())));
    }

    private static LevelSource levels(RigSetUp with, boolean tone) {
        return new AudioLevels(with.rigSettings(AudioDevices.list()), tone);
    }

    @Override
    public void close() throws IOException {
        rig.close();
        book.close();
    }

    /** A rig before anybody set it up. */
    private static final class UnsetRig implements Rig {
        private static final int USUAL_RATE_HZ = 48_000;

        @Override
        public String id() {
            return AUDIO;
        }

        @Override
        public int sampleRateHz() {
            return USUAL_RATE_HZ;
        }

        @Override
        public Capture play(SweepPlan plan, TestPointKind kind, ProgressListener listener) throws RigException {
            throw new RigException(RigException.Cause.REFUSED, Reason.of("rigpage-not-set-up"));
        }

        @Override
        public void stop() {
            // Nothing plays.
        }

        @Override
        public void close() {
            // Nothing is open.
        }
    }
}
