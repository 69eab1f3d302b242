package org.docksweep.kiosk.commands;

import java.awt.GraphicsEnvironment;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.docksweep.kiosk.night.DockNight;
import org.docksweep.kiosk.night.NightOptions;
import org.docksweep.kiosk.night.NightPace;
import org.docksweep.kiosk.night.TruthTable;
import org.docksweep.kiosk.screens.BenchPages;
import org.docksweep.kiosk.service.ServiceProblem;
import org.docksweep.kiosk.service.ServiceUnreachable;
import org.docksweep.sweep.RigException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Runs the demo night. */
@Command(
        name = "night",
        mixinStandardHelpOptions = true,
        description = "Runs the dock night of the invented house: a truckload of returned cabinets through the real"
                + " kiosk and, unless --seeds is given, the real service.",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:every cabinet went where it belongs",
            "1:a hard fault was missed, a healthy cabinet failed, or a prompt or hold was not given",
            "2:the command line is wrong",
            "3:the night could not be run"
        })
public final class NightCommand implements Callable<Integer> {
    @Option(
            names = "--folder",
            description = "Folder of the night; emptied first if a night made it. Default: ${DEFAULT-VALUE}",
            defaultValue = "demo-night")
    private Path folder;

    @Option(
            names = "--seed",
            description = "Seed of house, rig and truckload. Default: ${DEFAULT-VALUE}",
            defaultValue = "1")
    private long seed;

    @Option(
            names = "--seeds",
            description = "Runs this many nights, from --seed upwards, without a service, and counts.")
    private Integer seeds;

    @Option(names = "--service-jar", description = "Executable jar of the service.")
    private Path serviceJar;

    @Option(names = "--headless", description = "No window, also on a machine with a display.")
    private boolean headless;

    @Option(names = "--by-hand", description = "Opens the window and leaves the truck to you: type the labels listed.")
    private boolean byHand;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() throws InterruptedException {
        PrintWriter out = spec.commandLine().getOut();
        try {
            return seeds == null ? oneNight(out) : manyNights(out);
        } catch (IOException | RigException | ServiceProblem | ServiceUnreachable e) {
            spec.commandLine().getErr().println("The night could not be run: " + e.getMessage());
            return 3;
        }
    }

    private int oneNight(PrintWriter out)
            throws IOException, RigException, ServiceProblem, ServiceUnreachable, InterruptedException {
        if (serviceJar == null) {
            throw new IOException("no service jar is given; use --service-jar, or run: mvn -Pdemo");
        }
        boolean window = !headless && !GraphicsEnvironment.isHeadless();
        if (byHand && !window) {
            throw new IOException("--by-hand needs a display; leave it out to let the night run by itself");
        }
        TruthTable table;
        try (DockNight night = new DockNight(new NightOptions(folder, seed, serviceJar, window), out)) {
            night.open();
            Stand stand = window
                    ? Stand.open(
                            night.dock(),
                            night.models(),
                            night.zone(),
                            List.of(new BenchPages(night.bench(), night.models())))
                    : null;
            if (byHand) {
                night.listTruck();
                stand.awaitClosed();
                return 0;
            }
            if (window) {
                out.println("The night runs by itself in the window; hands off until the truck is in.");
            }
            table = night.takeTruckIn(window ? Stand.READABLE : NightPace.AT_ONCE);
            night.closeNight();
            night.benchMorning();
            report(table, out);
            if (window) {
                out.println("The window is yours now; close it to end.");
                out.flush();
                stand.awaitClosed();
            }
        }
        return table.passes() ? 0 : 1;
    }

    private void report(TruthTable table, PrintWriter out) {
        out.println();
        table.lines().forEach(out::println);
        out.println();
        out.println("Tags and sheets: " + folder.resolve("papers").toAbsolutePath());
        verdict(table, out);
    }

    private int manyNights(PrintWriter out)
            throws IOException, RigException, ServiceProblem, ServiceUnreachable, InterruptedException {
        TruthTable all = new TruthTable();
        for (long s = seed; s < seed + seeds; s++) {
            NightOptions options = new NightOptions(folder.resolve("seed-" + s), s, null, false);
            try (DockNight night = new DockNight(options, out)) {
                night.open();
                all.addAll(night.takeTruckIn(NightPace.AT_ONCE));
            }
        }
        out.println();
        all.rows().stream()
                .filter(r -> r.match() != TruthTable.Match.RIGHT)
                .forEach(r -> out.println(r.match() + ": " + r));
        out.println();
        all.summary().forEach(out::println);
        return verdict(all, out);
    }

    private static int verdict(TruthTable table, PrintWriter out) {
        out.println(
                table.passes() ? "Every cabinet went where it belongs." : "Not every cabinet went where it belongs.");
        out.flush();
        return table.passes() ? 0 : 1;
    }
}
