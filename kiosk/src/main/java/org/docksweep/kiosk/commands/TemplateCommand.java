package org.docksweep.kiosk.commands;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.docksweep.fleet.EnclosureKind;
import org.docksweep.fleet.template.TwoWayTemplate;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Makes a model book from what is printed on a cabinet. */
@Command(
        name = "template",
        mixinStandardHelpOptions = true,
        description =
                "Makes the model of a passive two-way cabinet from its plate and a ruler: rated impedance, crossover"
                        + " frequency, slope, box, woofers, pad. Prints a model book as JSON, to be taught with known-good units.",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:the model is printed or written",
            "2:the command line is wrong",
            "3:a value cannot be, or the file cannot be written"
        })
public final class TemplateCommand implements Callable<Integer> {
    @Option(names = "--code", paramLabel = "CODE", required = true, description = "Code of the cabinet model.")
    private String code;

    @Option(names = "--name", paramLabel = "NAME", description = "Name of the cabinet model. Default: its code")
    private String name;

    @Option(
            names = "--impedance",
            paramLabel = "OHM",
            description = "Rated impedance. Default: ${DEFAULT-VALUE}",
            defaultValue = "8")
    private double impedanceOhm;

    @Option(
            names = "--crossover",
            paramLabel = "HZ",
            description = "Crossover frequency. Default: ${DEFAULT-VALUE}",
            defaultValue = "1800")
    private double crossoverHz;

    @Option(
            names = "--slope",
            paramLabel = "DB",
            description = "Slope in dB per octave: 6, 12, 18 or 24. Default: ${DEFAULT-VALUE}",
            defaultValue = "12")
    private int slopeDb;

    @Option(
            names = "--box",
            paramLabel = "KIND",
            description = "closed or vented. Default: ${DEFAULT-VALUE}",
            defaultValue = "vented")
    private EnclosureKind box;

    @Option(
            names = "--woofers",
            paramLabel = "N",
            description = "Cones, 1, or 2 in parallel in one box. Default: ${DEFAULT-VALUE}",
            defaultValue = "1")
    private int woofers;

    @Option(
            names = "--woofer-inches",
            paramLabel = "INCHES",
            description = "Size of a cone. Default: ${DEFAULT-VALUE}",
            defaultValue = "12")
    private double wooferInches;

    @Option(
            names = "--pad",
            paramLabel = "DB",
            description = "Loss of the pad before the horn driver; 0 for none. Default: ${DEFAULT-VALUE}",
            defaultValue = "6")
    private double padDb;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "FILE",
            description = "File to write instead of printing.")
    private Path output;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() throws IOException {
        TwoWayTemplate template = new TwoWayTemplate(
                code,
                name == null ? code : name,
                impedanceOhm,
                crossoverHz,
                slopeDb,
                box,
                woofers,
                wooferInches,
                padDb);
        byte[] json = JsonFiles.bytesOf(template.book());
        if (output != null) {
            JsonFiles.write(output, json);
        } else {
            spec.commandLine().getOut().println(new String(json, StandardCharsets.UTF_8));
            spec.commandLine().getOut().flush();
        }
        return 0;
    }
}
