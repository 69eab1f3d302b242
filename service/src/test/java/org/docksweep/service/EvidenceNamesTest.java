package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every class, test and method that docs/asvs.md and docs/security.md name as evidence is there. */
class EvidenceNamesTest {
    private static final Path ROOT = Path.of("..");
    private static final List<String> MODULES = List.of("service", "kiosk", "shared-model", "demo-data");
    private static final Pattern CLASS = Pattern.compile("`([A-Z][A-Za-z]+)(?:\\.([a-z][A-Za-z]+))?`");
    private static final Pattern METHOD = Pattern.compile("`([a-z]+(?:[A-Z][a-z]*){2,})`");

    private static Map<String, Path> sources() throws IOException {
        Map<String, Path> sources = new TreeMap<>();
        for (String module : MODULES) {
            try (Stream<Path> files = Files.walk(ROOT.resolve(module).resolve("src"))) {
                files.filter(f -> f.toString().endsWith(".java"))
                        .forEach(f -> sources.put(f.getFileName().toString().replace(".java", ""), f));
            }
        }
        return sources;
    }

    private static boolean declares(Path source, String method) throws IOException {
        return Files.readString(source, StandardCharsets.UTF_8).contains(" " + method + "(");
    }

    private static boolean ofThePlatform(String type, String method) {
        try {
            return Stream.of(Class.forName("java.lang." + type).getMethods())
                    .anyMatch(m -> m.getName().equals(method));
        } catch (ClassNotFoundException e) {
            return false;
        }
    }

    @Test
    void namesNothingThatIsNotThere() throws IOException {
        Map<String, Path> sources = sources();
        Set<String> named = new TreeSet<>();
        Set<String> absent = new TreeSet<>();
        for (String page : List.of("asvs.md", "security.md")) {
            String text = Files.readString(ROOT.resolve("docs").resolve(page), StandardCharsets.UTF_8);
            for (Matcher found = CLASS.matcher(text); found.find(); ) {
                named.add(found.group());
                Path source = sources.get(found.group(1));
                String method = found.group(2);
                boolean there = source == null
                        ? ofThePlatform(found.group(1), method)
                        : method == null || declares(source, method);
                if (!there) {
                    absent.add(found.group());
                }
            }
            for (Matcher found = METHOD.matcher(text); found.find(); ) {
                named.add(found.group());
                boolean there = false;
                for (Path source : sources.entrySet().stream()
                        .filter(s -> s.getKey().endsWith("Test") || s.getKey().endsWith("IT"))
                        .map(Map.Entry::getValue)
                        .collect(Collectors.toList())) {
                    there |= declares(source, found.group(1));
                }
                if (!there) {
                    absent.add(found.group());
                }
            }
        }
        assertThat(named).hasSizeGreaterThan(15);
        assertThat(absent).as("named in docs, but in no source file").isEmpty();
    }
}
