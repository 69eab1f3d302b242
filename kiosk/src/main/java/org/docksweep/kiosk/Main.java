package org.docksweep.kiosk;

import org.docksweep.kiosk.commands.CurveCommand;
import org.docksweep.kiosk.commands.JudgeCommand;
import org.docksweep.kiosk.commands.KioskCommand;
import org.docksweep.kiosk.commands.NightCommand;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/** Entry point of the kiosk: every thing it can do is a command. */
@Command(
        name = "docksweep",
        mixinStandardHelpOptions = true,
        description = "The kiosk at the return dock.",
        subcommands = {KioskCommand.class, NightCommand.class, JudgeCommand.class, CurveCommand.class},
        synopsisSubcommandLabel = "COMMAND")
public final class Main {
    private Main() {}

    /**
     * Runs a command and ends with its exit code.
     *
     * @param arguments command and its options
     */
    public static void main(String[] arguments) {
        System.exit(run(arguments));
    }

    /**
     * Runs a command.
     *
     * @param arguments command and its options
     * @return exit code
     */
    static int run(String... arguments) {
        return new CommandLine(new Main())
                .setCaseInsensitiveEnumValuesAllowed(true)
                .execute(arguments);
    }
}
