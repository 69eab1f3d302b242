package org.docksweep.kiosk.dock;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;

/** A disk of a few megabytes in the machine's memory, that can be filled to the last byte. Mounting it needs rights. */
final class SmallDisk implements AutoCloseable {
    /** Set to true where a disk that cannot be made is a failure. */
    private static final String REQUIRED = "docksweep.require.small-disk";

    private static final int BLOCK_BYTES = 4096;

    private final Path folder;
    private final Path filler;

    private SmallDisk(Path folder) {
        this.folder = folder;
        filler = folder.resolve("filler");
    }

    /** Mounts a disk, or skips the test where that is not allowed. */
    static SmallDisk mount(Path folder, int megabytes) throws IOException, InterruptedException {
        Files.createDirectories(folder);
        boolean mounted =
                run("mount", "-t", "tmpfs", "-o", "size=" + megabytes + "m", "docksweep-test", folder.toString());
        if (Boolean.getBoolean(REQUIRED)) {
            assertThat(mounted)
                    .as("a disk in memory is required (-D%s=true), but mount refused; run as root", REQUIRED)
                    .isTrue();
        }
        if (!mounted) {
            System.out.println("SKIPPED: no small disk; mounting one needs root");
        }
        Assumptions.assumeTrue(mounted, "skipped: no small disk; mounting one needs root");
        return new SmallDisk(folder);
    }

    private static boolean run(String... command) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(command).inheritIO().start();
        return process.waitFor(20, TimeUnit.SECONDS) && process.exitValue() == 0;
    }

    Path folder() {
        return folder;
    }

    /** Takes every byte that is left. */
    void fill() throws IOException {
        long free = Files.getFileStore(folder).getUsableSpace();
        try (OutputStream out = Files.newOutputStream(filler)) {
            for (long written = 0; written < free + BLOCK_BYTES; written += BLOCK_BYTES) {
                out.write(new byte[BLOCK_BYTES]);
            }
            throw new AssertionError("the disk took more than it has");
        } catch (IOException full) {
            assertThat(Files.getFileStore(folder).getUsableSpace()).isZero();
        }
    }

    void makeRoom() throws IOException {
        Files.delete(filler);
    }

    @Override
    public void close() throws IOException {
        try {
            assertThat(run("umount", folder.toString()))
                    .as("the disk is let go")
                    .isTrue();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
