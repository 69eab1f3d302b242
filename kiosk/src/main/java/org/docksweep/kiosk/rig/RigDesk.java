package org.docksweep.kiosk.rig;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Reason;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.rig.RigDeskState.Message;
import org.docksweep.kiosk.rig.RigDeskState.Mode;
import org.docksweep.sweep.PracticeRig;
import org.docksweep.sweep.RigException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Behind the rig page: set-up, calibration, checks, levels. All state lives on one thread, which also measures; stop goes
 * straight to the rig. What is asked while a measurement runs is not queued but left out, except stop.
 */
public final class RigDesk implements RigDeskActions, AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(RigDesk.class);

    private final RigDeskParts parts;
    private final DeskSweeps sweeps;
    private final List<Consumer<RigDeskState>> listeners = new CopyOnWriteArrayList<>();
    private final ExecutorService thread = Executors.newSingleThreadExecutor(work -> {
        Thread made = new Thread(work, "rig-desk");
        made.setDaemon(true);
        return made;
    });
    private final AtomicInteger stops = new AtomicInteger();
    private final AtomicBoolean busy = new AtomicBoolean();

    private Mode mode = Mode.OVERVIEW;
    private DeskWalk walk;
    private RigSetUp setUp;
    private Optional<Message> message = Optional.empty();
    private List<ChannelLevel> levels = List.of();
    private List<org.docksweep.kiosk.rig.audio.AudioDevices.Device> devices = List.of();
    private boolean sounding;
    private double share;
    private volatile RigDeskState state;

    /**
     * Opens the desk.
     *
     * @param parts what it works with
     */
    public RigDesk(RigDeskParts parts) {
        this.parts = parts;
        this.sweeps = new DeskSweeps(parts.rig());
        this.setUp = parts.setUp();
        if (parts.book().damagedLines() > 0) {
            message = Optional.of(new Message(
                    Reason.of(
                            "rigpage-book-damaged",
                            Integer.toString(parts.book().damagedLines()),
                            parts.book().file().toString()),
                    ReadingState.WATCH));
        }
        this.state = picture();
    }

    /**
     * The newest state.
     *
     * @return the state
     */
    public RigDeskState state() {
        return state;
    }

    /**
     * Adds a listener; it hears of every state from now on, on the desk's thread.
     *
     * @param listener the listener
     */
    public void addListener(Consumer<RigDeskState> listener) {
        listeners.add(listener);
    }

    /** Looks again how the rig stands: time alone changes that. */
    public void look() {
        post(() -> {});
    }

    private RigDeskState picture() {
        RigStanding standing = parts.standing().get();
        return new RigDeskState(
                mode,
                standing.words(),
                standing.state(),
                message,
                parts.book().calibrationInForce(),
                parts.book().newest(RigEntry.Checked.class),
                parts.book().newest(RigEntry.CommonMode.class),
                CheckChart.of(parts.book()),
                ContactTrend.of(parts.book()),
                PlugTrend.of(parts.book()),
                parts.book().studyInForce(),
                RigSound.of(parts.book()),
                levels,
                sounding,
                share,
                Optional.ofNullable(walk).map(DeskWalk::state),
                setUp,
                devices,
                parts.changer() != null);
    }

    private void publish() {
        RigDeskState newest = picture();
        state = newest;
        listeners.forEach(listener -> listener.accept(newest));
    }

    private void say(Reason words, ReadingState how) {
        message = Optional.of(new Message(words, how));
    }

    /** Does something on the desk's thread, unless it is at work. */
    private void post(Runnable work) {
        if (!busy.compareAndSet(false, true)) {
            return;
        }
        try {
            thread.execute(() -> {
                try {
                    work.run();
                } catch (RuntimeException e) {
                    LOG.error("Defect at the rig page", e);
                    sounding = false;
                    say(Reason.of("rigpage-defect", String.valueOf(e)), ReadingState.FAULT);
                } finally {
                    busy.set(false);
                }
                publish();
            });
        } catch (RejectedExecutionException e) {
            LOG.debug("The rig page is closed; what came after is ignored");
        }
    }

    @Override
    public void calibrate() {
        post(() -> beginIfSetUp(true));
    }

    @Override
    public void check() {
        post(() -> {
            if (parts.book().calibrationInForce().isEmpty()) {
                say(Reason.of("dock-rig-calibrate-first"), ReadingState.FAULT);
            } else {
                beginIfSetUp(false);
            }
        });
    }

    @Override
    public void study() {
        post(() -> {
            Optional<RigEntry.Calibrated> calibrated = parts.book().calibrationInForce();
            if (calibrated.isEmpty()) {
                say(Reason.of("dock-rig-calibrate-first"), ReadingState.FAULT);
                return;
            }
            walk = new StudyWalk(
                    parts.book(),
                    parts.signedOn(),
                    parts.clock(),
                    parts.standards().of(setUp),
                    calibrated.get().calibration());
            mode = Mode.WALK;
            message = Optional.empty();
        });
    }

    @Override
    public void sound() {
        post(() -> {
            Optional<RigEntry.Calibrated> calibrated = parts.book().calibrationInForce();
            if (calibrated.isEmpty()) {
                say(Reason.of("dock-rig-calibrate-first"), ReadingState.FAULT);
                return;
            }
            boolean practice = parts.rig() instanceof PracticeRig;
            walk = new SoundWalk(
                    parts.book(),
                    parts.signedOn(),
                    parts.clock(),
                    calibrated.get().calibration(),
                    practice
                            ? Optional.of(StandardSet.PRACTICE_CABINET)
                            : parts.book()
                                    .soundInForce()
                                    .flatMap(s -> parts.cabinets().find(s.tag())));
            mode = Mode.WALK;
            message = Optional.empty();
        });
    }

    @Override
    public void acceptAnew() {
        post(() -> {
            if (walk != null) {
                walk.acceptAnew();
                message = Optional.empty();
            }
        });
    }

    @Override
    public void scanned(AssetTag tag) {
        post(() -> {
            Optional<StudyCabinet> cabinet = parts.cabinets().find(tag);
            message = cabinet.isEmpty()
                    ? Optional.of(new Message(Reason.of("rigpage-study-unknown", tag.value()), ReadingState.FAULT))
                    : Optional.ofNullable(walk).flatMap(w -> w.cabinet(cabinet.get()));
        });
    }

    private void beginIfSetUp(boolean calibrating) {
        try {
            begin(calibrating);
        } catch (IllegalArgumentException e) {
            // A number of the set-up is missing; the set-up itself says which.
            LOG.info("The rig is not set up: {}", e.getMessage());
            say(Reason.of("rigpage-not-set-up"), ReadingState.FAULT);
        }
    }

    private void begin(boolean calibrating) {
        boolean practice = parts.rig() instanceof PracticeRig || parts.changer() == null;
        double senseOhm = practice ? 1 : setUp.number(SetUpField.SENSE_OHM);
        walk = new RigWalk(
                calibrating,
                // Wires of a practice rig cannot be moved.
                !practice,
                parts.book(),
                parts.rig().id(),
                parts.signedOn(),
                parts.clock(),
                parts.standards().of(setUp),
                senseOhm,
                setUp.value(SetUpField.AMPLIFIER).equals("grounded"));
        mode = Mode.WALK;
        message = Optional.empty();
    }

    @Override
    public void measure() {
        post(() -> {
            if (walk == null || walk.finished()) {
                return;
            }
            Optional<Reason> notYet = walk.notYet();
            if (notYet.isPresent()) {
                say(notYet.get(), ReadingState.FAULT);
                return;
            }
            int stopsBefore = stops.get();
            try {
                sounds(true);
                message =
                        Optional.of(sweeps.take(walk, parts.hand(), () -> stops.get() != stopsBefore, this::progress));
            } catch (RigException e) {
                say(e.reason(), e.kind() == RigException.Cause.STOPPED ? ReadingState.WATCH : ReadingState.FAULT);
            } catch (IOException e) {
                say(Reason.of("rigpage-not-kept", String.valueOf(e.getMessage())), ReadingState.FAULT);
            } finally {
                levels = sweeps.levels();
                sounding = false;
            }
        });
    }

    /** Comes on the rig's thread while the desk's waits for it. */
    private void progress(double done) {
        share = done;
        publish();
    }

    private void sounds(boolean now) {
        sounding = now;
        share = 0;
        publish();
    }

    @Override
    public void skip() {
        post(() -> {
            if (walk != null) {
                walk.skip();
                message = Optional.empty();
            }
        });
    }

    @Override
    public void back() {
        post(() -> {
            if (walk != null) {
                walk.back();
                message = Optional.empty();
            }
        });
    }

    @Override
    public void leave() {
        post(() -> {
            walk = null;
            mode = Mode.OVERVIEW;
            message = Optional.empty();
        });
    }

    @Override
    public void loadOhm(double ohm) {
        post(() -> {
            if (!(ohm >= 0.5 && ohm <= 1000)) {
                say(Reason.of("rigpage-number-range", RigSetUp.plain(ohm), "0.5", "1000"), ReadingState.FAULT);
            } else if (walk != null) {
                walk.loadOhm(ohm);
                say(Reason.of("rigpage-load-chosen", RigSetUp.plain(ohm)), ReadingState.OK);
            }
        });
    }

    @Override
    public void otherContacts() {
        post(() -> {
            if (walk != null) {
                walk.otherContacts();
            }
        });
    }

    @Override
    public void openSetUp() {
        post(() -> {
            if (parts.changer() != null) {
                devices = parts.devices().get();
                mode = Mode.SET_UP;
                walk = null;
                message = Optional.empty();
            }
        });
    }

    @Override
    public void save(RigSetUp next) {
        post(() -> {
            devices = parts.devices().get();
            Optional<RigSetUp.Problem> wrong = next.problems(devices).stream()
                    .filter(RigSetUp.Problem::blocks)
                    .findFirst();
            if (wrong.isPresent()) {
                say(wrong.get().words(), ReadingState.FAULT);
                return;
            }
            try {
                parts.changer().change(next);
                parts.book().append(new RigEntry.SetUp(parts.clock().instant(), parts.operator(), next.values()));
                setUp = next;
                mode = Mode.OVERVIEW;
                say(Reason.of("rigpage-saved"), ReadingState.OK);
            } catch (RigException e) {
                say(e.reason(), ReadingState.FAULT);
            } catch (IOException e) {
                say(Reason.of("rigpage-not-kept", String.valueOf(e.getMessage())), ReadingState.FAULT);
            }
        });
    }

    @Override
    public void listen(RigSetUp with, boolean tone) {
        post(() -> {
            int stopsBefore = stops.get();
            try {
                LevelSource source = parts.levels().of(with, tone);
                say(Reason.of(tone ? "rigpage-listening-tone" : "rigpage-listening"), ReadingState.NOT_JUDGED);
                sounds(true);
                source.listen(() -> stops.get() != stopsBefore, heard -> {
                    levels = heard;
                    publish();
                });
                message = Optional.empty();
            } catch (RigException e) {
                message = e.kind() == RigException.Cause.STOPPED
                        ? Optional.empty()
                        : Optional.of(new Message(e.reason(), ReadingState.FAULT));
            } catch (IllegalArgumentException e) {
                say(Reason.of("rig-settings-wrong", String.valueOf(e.getMessage())), ReadingState.FAULT);
            } finally {
                sounding = false;
            }
        });
    }

    @Override
    public void stop() {
        stops.incrementAndGet();
        parts.rig().stop();
    }

    @Override
    public void close() {
        stop();
        thread.shutdownNow();
        try {
            if (!thread.awaitTermination(10, TimeUnit.SECONDS)) {
                LOG.warn("The rig page did not end within 10 s");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
