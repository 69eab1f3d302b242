package org.docksweep.kiosk.spool;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.docksweep.contract.CheckInBody;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OutboxSenderTest {
    private static final long PATIENCE_S = 20;
    private static final Backoff SHORT = new Backoff(Duration.ofMillis(1), Duration.ofMillis(5));
    private static final long JITTER_SEED = 11;

    @TempDir
    Path folder;

    private final List<OutboxItem> tried = Collections.synchronizedList(new ArrayList<>());
    private volatile Delivery answer = new Delivery.Delivered();
    private final Object changed = new Object();
    private Spool spool;
    private OutboxSender sender;

    @BeforeEach
    void open() {
        spool = Spool.open(folder, Clock.systemUTC());
        sender = new OutboxSender(
                spool,
                item -> {
                    tried.add(item);
                    return answer;
                },
                SHORT,
                () -> {
                    synchronized (changed) {
                        changed.notifyAll();
                    }
                });
    }

    @AfterEach
    void close() {
        sender.close();
        spool.close();
    }

    @Test
    void sendsInOrderAndOnlyOnce() throws InterruptedException {
        List<CheckInBody> bodies = new ArrayList<>();
        for (int i = 1; i <= 5; i++) {
            bodies.add(SpoolTest.checkIn("TST-00000" + i));
        }
        bodies.forEach(spool::record);
        sender.start();
        await(() -> spool.outbox().counts().waiting() == 0);
        assertThat(tried)
                .extracting(OutboxItem::path)
                .containsExactlyElementsOf(
                        bodies.stream().map(b -> "/api/check-ins/" + b.id()).toList());
        assertThat(spool.outbox().acknowledgedCheckIns())
                .containsExactlyElementsOf(bodies.stream().map(CheckInBody::id).toList());
    }

    @Test
    void keepsEverythingWhileServiceIsDownAndSendsItAfterwards() throws InterruptedException {
        answer = new Delivery.NotNow("connection refused", Trouble.UNREACHABLE);
        spool.record(SpoolTest.checkIn("TST-000001"));
        spool.record(SpoolTest.checkIn("TST-000002"));
        int before = spool.outbox().counts().waiting();
        sender.start();
        await(() -> tried.size() >= 3);
        assertThat(before).isEqualTo(2);
        assertThat(spool.outbox().counts().waiting()).isEqualTo(2);
        assertThat(sender.reachable()).isFalse();
        assertThat(tried)
                .extracting(OutboxItem::sequence)
                .containsOnly(tried.get(0).sequence());
        answer = new Delivery.Delivered();
        sender.hurry();
        await(() -> spool.outbox().counts().waiting() == 0);
        assertThat(spool.outbox().counts().sent()).isEqualTo(2);
        assertThat(sender.reachable()).isTrue();
    }

    @Test
    void parksWhatCanNeverSucceedAndGoesOn() throws InterruptedException {
        answer = new Delivery.Refused("no such cabinet");
        spool.record(SpoolTest.checkIn("TST-000001"));
        sender.start();
        await(() -> spool.outbox().counts().parked() == 1);
        answer = new Delivery.Delivered();
        spool.record(SpoolTest.checkIn("TST-000002"));
        sender.hurry();
        await(() -> spool.outbox().counts().sent() == 1);
        assertThat(spool.outbox().parked()).extracting(ParkedItem::words).containsExactly("no such cabinet");
        assertThat(spool.outbox().counts().notAtService()).isEqualTo(1);
    }

    @Test
    void tellsOfEveryRefusedRecordOnce() throws InterruptedException {
        List<String> heard = new ArrayList<>();
        ParkedTeller teller = new ParkedTeller(spool);
        answer = new Delivery.Refused("no such cabinet");
        spool.record(SpoolTest.checkIn("TST-000001"));
        sender.start();
        await(() -> spool.outbox().counts().parked() == 1);
        teller.run();
        assertThat(heard).isEmpty();
        teller.tell(heard::add);
        teller.run();
        assertThat(heard).containsExactly("no such cabinet");
    }

    @Test
    void waitsLongerAfterEveryFailureUpToTheCapWithJitter() {
        Backoff backoff = new Backoff(Duration.ofMillis(100), Duration.ofSeconds(2));
        Random random = new Random(JITTER_SEED);
        for (int failures = 1; failures < 40; failures++) {
            double fullMs = Math.min(2000, 100 * Math.pow(2, failures - 1));
            assertThat(backoff.after(failures, random).toMillis())
                    .isBetween((long) Math.floor(fullMs / 2), (long) Math.ceil(fullMs));
        }
    }

    private void await(BooleanSupplier wanted) throws InterruptedException {
        long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_S);
        synchronized (changed) {
            while (!wanted.getAsBoolean()) {
                assertThat(System.nanoTime()).as("still waiting").isLessThan(deadline);
                changed.wait(20);
            }
        }
    }
}
