package org.docksweep.kiosk.commands;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.docksweep.kiosk.Main;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;

/** docs/commands.md says what the program has, no more and no less. */
class CommandsPageTest {
    private static final Path PAGE = Path.of("../docs/commands.md");
    private static final Pattern OPTION = Pattern.compile("`(--?[a-zA-Z][a-z-]*)");
    private static final Set<String> EVERYWHERE = Set.of("-h", "--help", "-V", "--version");

    @Test
    void describesEveryCommandWithEveryOptionAndNoOther() throws IOException {
        Map<String, Set<String>> written = new TreeMap<>();
        sections().forEach((command, text) -> {
            Set<String> options = new TreeSet<>();
            text.lines().filter(line -> line.startsWith("| `-")).forEach(line -> {
                Matcher option = OPTION.matcher(line.substring(0, line.indexOf('|', 1)));
                while (option.find()) {
                    options.add(option.group(1));
                }
            });
            written.put(command, options);
        });
        Map<String, Set<String>> real = new TreeMap<>();
        Main.commandLine().getSubcommands().forEach((name, command) -> {
            Set<String> options =
                    new TreeSet<>(command.getCommandSpec().optionsMap().keySet());
            options.removeAll(EVERYWHERE);
            real.put(name, options);
        });
        assertThat(written).isEqualTo(real);
    }

    @Test
    void namesTheExitCodesThatHelpNames() throws IOException {
        Map<String, String> sections = sections();
        for (Map.Entry<String, CommandLine> command :
                Main.commandLine().getSubcommands().entrySet()) {
            String section = sections.get(command.getKey());
            String codes = section.substring(section.indexOf("Exit codes:"));
            for (String code : command.getValue()
                    .getCommandSpec()
                    .usageMessage()
                    .exitCodeList()
                    .keySet()) {
                assertThat(codes).as("exit code of %s", command.getKey()).containsPattern("\\b" + code + "\\b");
            }
            assertThat(section).as("example of %s", command.getKey()).contains("docksweep " + command.getKey() + " ");
        }
    }

    @Test
    void helpNamesEveryOptionAndEndsWithZero() {
        Main.commandLine().getSubcommands().forEach((name, command) -> {
            CommandRun help = CommandRun.of(name, "--help");
            assertThat(help.exitCode()).isZero();
            assertThat(help.out())
                    .contains(command.getCommandSpec().optionsMap().keySet())
                    .contains("Exit codes:");
        });
    }

    @Test
    void endsWithTwoWhenTheCommandLineIsWrong() {
        for (String name : Main.commandLine().getSubcommands().keySet()) {
            assertThat(CommandRun.of(name, "--no-such-option").exitCode())
                    .as(name)
                    .isEqualTo(2);
        }
    }

    private static Map<String, String> sections() throws IOException {
        Map<String, String> sections = new TreeMap<>();
        String[] parts = Files.readString(PAGE).split("(?m)^## ");
        for (int i = 1; i < parts.length; i++) {
            int end = parts[i].indexOf('\n');
            sections.put(parts[i].substring(0, end), parts[i].substring(end));
        }
        return sections;
    }
}
