package org.docksweep.kiosk.night;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.Deflater;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/**
 * Starts Java programs of the test's class path from an archive of their classes, as a packaged kiosk starts: with many starts most of
 * the time would be loading. An archive wants jars, so folders of classes are packed first.
 */
final class PreparedStart {
    private final String classPath;
    private final Path archive;

    /**
     * Packs the class path.
     *
     * @param folder where jars and archive go
     * @throws IOException if they cannot be written
     */
    PreparedStart(Path folder) throws IOException {
        Files.createDirectories(folder);
        this.archive = folder.resolve("classes.jsa");
        List<String> jars = new ArrayList<>();
        for (String entry : System.getProperty("java.class.path").split(File.pathSeparator)) {
            Path path = Path.of(entry);
            if (Files.isDirectory(path)) {
                Path jar = folder.resolve(jars.size() + ".jar");
                pack(path, jar);
                jars.add(jar.toString());
            } else if (Files.exists(path)) {
                jars.add(entry);
            }
        }
        classPath = String.join(File.pathSeparator, jars);
    }

    /** A program from now on started from the archive, if there is one. */
    ProcessBuilder program(List<String> options, Class<?> main, String... arguments) {
        List<String> all = new ArrayList<>(options);
        if (Files.exists(archive)) {
            all.add("-XX:SharedArchiveFile=" + archive);
        }
        return command(all, main, arguments);
    }

    /** The same program whose classes make the archive when it ends by itself. */
    ProcessBuilder archiving(List<String> options, Class<?> main, String... arguments) {
        List<String> all = new ArrayList<>(options);
        all.addAll(List.of("-XX:ArchiveClassesAtExit=" + archive, "-Xlog:cds=off", "-Xlog:cds+dynamic=off"));
        return command(all, main, arguments);
    }

    private ProcessBuilder command(List<String> options, Class<?> main, String... arguments) {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(options);
        command.addAll(List.of("-cp", classPath, main.getName()));
        command.addAll(List.of(arguments));
        return new ProcessBuilder(command);
    }

    private static void pack(Path classes, Path jar) throws IOException {
        List<Path> files;
        try (Stream<Path> tree = Files.walk(classes)) {
            files = tree.filter(Files::isRegularFile).sorted().toList();
        }
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(jar))) {
            zip.setLevel(Deflater.NO_COMPRESSION);
            for (Path file : files) {
                zip.putNextEntry(
                        new ZipEntry(classes.relativize(file).toString().replace(File.separatorChar, '/')));
                Files.copy(file, zip);
                zip.closeEntry();
            }
        }
    }
}
