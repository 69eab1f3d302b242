package org.docksweep.kiosk.commands;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.docksweep.kiosk.Main;
import picocli.CommandLine;

/**
 * A command as the shell runs it.
 *
 * @param exitCode exit code
 * @param out what it printed
 * @param err what it printed on the error stream
 */
record CommandRun(int exitCode, String out, String err) {
    static CommandRun of(Object... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        CommandLine line = Main.commandLine().setOut(new PrintWriter(out)).setErr(new PrintWriter(err));
        String[] words =
                java.util.Arrays.stream(arguments).map(Object::toString).toArray(String[]::new);
        int exitCode = line.execute(words);
        return new CommandRun(exitCode, out.toString(), err.toString());
    }
}
