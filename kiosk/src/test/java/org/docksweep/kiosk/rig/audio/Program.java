package org.docksweep.kiosk.rig.audio;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/** A started Java program whose lines are read while it runs. */
final class Program implements AutoCloseable {
    private static final long BOUND_S = 60;

    private final Process process;
    private final String awaited;
    private final CountDownLatch said = new CountDownLatch(1);
    private final CountDownLatch ended = new CountDownLatch(1);
    private final List<String> lines = new ArrayList<>();

    /**
     * Starts a program.
     *
     * @param builder the program
     * @param awaited line for which {@link #awaitLine()} waits
     */
    Program(ProcessBuilder builder, String awaited) throws IOException {
        this.awaited = awaited;
        this.process = builder.start();
        Thread reading = new Thread(this::read, "program-lines");
        reading.setDaemon(true);
        reading.start();
    }

    private void read() {
        try (BufferedReader reader =
                new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                synchronized (lines) {
                    lines.add(line);
                    lines.notifyAll();
                }
                if (line.equals(awaited)) {
                    said.countDown();
                }
            }
        } catch (IOException e) {
            synchronized (lines) {
                lines.add("unreadable: " + e);
            }
        }
        ended.countDown();
        synchronized (lines) {
            lines.notifyAll();
        }
    }

    void awaitLine() throws InterruptedException {
        if (!said.await(BOUND_S, TimeUnit.SECONDS)) {
            throw new AssertionError("the program never said \"" + awaited + "\", but " + lines());
        }
    }

    /** Types a line into the program. */
    void type(String line) throws IOException {
        process.getOutputStream().write((line + "\n").getBytes(StandardCharsets.UTF_8));
        process.getOutputStream().flush();
    }

    /** Waits until the program has said so many lines that begin so, and gives the last of them. */
    String awaitLine(String start, int count) throws InterruptedException {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(BOUND_S);
        synchronized (lines) {
            while (lines.stream().filter(line -> line.startsWith(start)).count() < count) {
                long leftMs = TimeUnit.NANOSECONDS.toMillis(end - System.nanoTime());
                if (leftMs <= 0 || ended.getCount() == 0) {
                    throw new AssertionError("the program never said " + count + " x \"" + start + "\", but " + lines);
                }
                lines.wait(leftMs);
            }
            return lines.stream()
                    .filter(line -> line.startsWith(start))
                    .skip(count - 1)
                    .findFirst()
                    .orElseThrow();
        }
    }

    /** All lines, after the program has ended by itself within a bound. */
    List<String> awaitEnd() throws InterruptedException {
        if (!ended.await(BOUND_S, TimeUnit.SECONDS)) {
            throw new AssertionError("the program did not end within " + BOUND_S + " s, but said " + lines());
        }
        return lines();
    }

    private List<String> lines() {
        synchronized (lines) {
            return List.copyOf(lines);
        }
    }

    /** The words after the name of a fact. */
    static Optional<String> fact(List<String> lines, String name) {
        return lines.stream()
                .filter(line -> line.startsWith(name + " "))
                .map(line -> line.substring(name.length() + 1))
                .findFirst();
    }

    @Override
    public void close() {
        process.destroyForcibly();
    }
}
