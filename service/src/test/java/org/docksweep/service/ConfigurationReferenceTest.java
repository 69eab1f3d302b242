package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.docksweep.service.retention.RetentionSettings;
import org.docksweep.service.site.Site;
import org.junit.jupiter.api.Test;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.env.YamlPropertySourceLoader;
import org.springframework.core.env.EnumerablePropertySource;
import org.springframework.core.io.ClassPathResource;

/** docs/operations.md names every setting of the service's own, and no other. */
class ConfigurationReferenceTest {
    private static final Path REFERENCE = Path.of("..", "docs", "operations.md");
    private static final Path SOURCES = Path.of("src", "main", "java");
    private static final Pattern IN_CODE = Pattern.compile("\\$\\{(docksweep\\.[a-z.-]+)|\"(docksweep\\.[a-z.-]+)\"");
    private static final Pattern IN_TEXT = Pattern.compile("`(docksweep\\.[a-z.-]+)`((?:, `\\.[a-z-]+`)*)");

    private static Set<String> known() throws IOException {
        Set<String> known = new TreeSet<>();
        for (String file : List.of("application.yaml", "application-postgresql.yaml", "application-metrics.yaml")) {
            new YamlPropertySourceLoader()
                    .load(file, new ClassPathResource(file)).stream()
                            .map(EnumerablePropertySource.class::cast)
                            .flatMap(s -> Stream.of(s.getPropertyNames()))
                            .filter(n -> n.startsWith("docksweep."))
                            .forEach(known::add);
        }
        try (Stream<Path> files = Files.walk(SOURCES)) {
            for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
                Matcher matcher = IN_CODE.matcher(Files.readString(file, StandardCharsets.UTF_8));
                while (matcher.find()) {
                    known.add(matcher.group(1) != null ? matcher.group(1) : matcher.group(2));
                }
            }
        }
        for (Class<?> settings : List.of(Site.class, RetentionSettings.class)) {
            String prefix =
                    settings.getAnnotation(ConfigurationProperties.class).value();
            for (var component : settings.getRecordComponents()) {
                known.add(prefix + "."
                        + component.getName().replaceAll("([A-Z])", "-$1").toLowerCase(java.util.Locale.ROOT));
            }
        }
        // Prefixes of records.
        known.removeAll(Set.of("docksweep.limits", "docksweep.retention"));
        return known;
    }

    private static Set<String> documented() throws IOException {
        Set<String> documented = new TreeSet<>();
        Matcher matcher = IN_TEXT.matcher(Files.readString(REFERENCE, StandardCharsets.UTF_8));
        while (matcher.find()) {
            String name = matcher.group(1);
            documented.add(name);
            Matcher more = Pattern.compile("`\\.([a-z-]+)`").matcher(matcher.group(2));
            while (more.find()) {
                documented.add(name.substring(0, name.lastIndexOf('.') + 1) + more.group(1));
            }
        }
        return documented;
    }

    @Test
    void namesEverySettingAndNoOther() throws IOException {
        assertThat(known()).hasSizeGreaterThan(15);
        assertThat(documented()).isEqualTo(known());
    }
}
