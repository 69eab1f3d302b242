package org.docksweep.kiosk;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.util.Arrays;
import org.docksweep.kiosk.commands.CalibrateCommand;
import org.docksweep.kiosk.commands.CurveCommand;
import org.docksweep.kiosk.commands.JudgeCommand;
import org.docksweep.kiosk.commands.KioskCommand;
import org.docksweep.kiosk.commands.NightCommand;
import org.docksweep.kiosk.commands.ProveCommand;
import org.docksweep.kiosk.commands.RenderCommand;
import org.docksweep.kiosk.commands.TeachCommand;
import org.docksweep.kiosk.commands.TemplateCommand;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/** Entry point of the kiosk: every thing it can do is a command. */
@Command(
        name = "docksweep",
        mixinStandardHelpOptions = true,
        description = "The kiosk at the return dock.",
        subcommands = {
            KioskCommand.class,
            NightCommand.class,
            JudgeCommand.class,
            CurveCommand.class,
            RenderCommand.class,
            TeachCommand.class,
            CalibrateCommand.class,
            ProveCommand.class,
            TemplateCommand.class
        },
        synopsisSubcommandLabel = "COMMAND")
public final class Main {
    /** Exit code when something cannot be read or written. */
    private static final int CANNOT = 3;

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
        if (arguments.length > 0 && arguments[0].equals("kiosk")) {
            // The window must be up soon: reading the options of all other commands takes a tenth of a second.
            CommandLine kiosk = ready(new CommandLine(new KioskCommand()).setCommandName("docksweep kiosk"));
            return kiosk.execute(Arrays.copyOfRange(arguments, 1, arguments.length));
        }
        return commandLine().execute(arguments);
    }

    /**
     * The commands, ready to run. What cannot be read or written ends with one line that says why, and exit code 3; a
     * stack trace is left to mistakes of this program.
     *
     * @return a new command line
     */
    public static CommandLine commandLine() {
        return ready(new CommandLine(new Main()));
    }

    private static CommandLine ready(CommandLine commands) {
        return commands.setCaseInsensitiveEnumValuesAllowed(true).setExecutionExceptionHandler((e, line, parsed) -> {
            if (!(e instanceof IOException || e instanceof IllegalArgumentException)) {
                throw e;
            }
            line.getErr().println(oneLine(e));
            return CANNOT;
        });
    }

    private static String oneLine(Exception e) {
        String words = e.getMessage();
        if (e instanceof FileSystemException file) {
            words = file.getFile() + " cannot be read or written"
                    + (file.getReason() == null ? "" : ": " + file.getReason());
        }
        return (words == null ? e.getClass().getSimpleName() : words).strip().replaceAll("\\s*\\R\\s*", " ");
    }
}
