package org.docksweep.kiosk.commands;

import java.awt.GraphicsEnvironment;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.docksweep.fleet.Reasons;
import org.docksweep.kiosk.people.SignOnParts;
import org.docksweep.kiosk.screens.ScanFrame;
import org.docksweep.kiosk.screens.Theme;
import org.docksweep.kiosk.settings.KioskSettings;
import org.docksweep.kiosk.settings.SettingsFile;
import org.docksweep.kiosk.spool.SpoolException;
import org.docksweep.paper.TagForm;
import org.docksweep.sweep.RigException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Opens the kiosk at the dock. */
@Command(
        name = "kiosk",
        mixinStandardHelpOptions = true,
        description =
                "Opens the window at the dock. Without settings it begins with the set-up walk. Works on without the"
                        + " service once it has a copy of the fleet. The environment variable DOCKSWEEP_TOKEN counts more than the"
                        + " token that was set up.",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {"0:the window was closed", "2:the command line is wrong", "3:the kiosk could not be opened"})
public final class KioskCommand implements Callable<Integer> {
    private static final Logger LOG = LoggerFactory.getLogger(KioskCommand.class);

    @Option(names = "--service", description = "Address of the service. Default: as set up.")
    private URI service;

    @Option(
            names = "--folder",
            description = "Data folder of this kiosk. Default: ${DEFAULT-VALUE}",
            defaultValue = "${sys:user.home}/.docksweep-kiosk")
    private Path folder;

    @Option(
            names = "--number",
            description = "Number of this kiosk, 1 to 99; part of every job code. Default: as set up.")
    private Integer number;

    @Option(
            names = "--operator",
            description = "Person signed on for good. Without it people sign on with badge and PIN.")
    private String operator;

    @Option(
            names = "--lock-after",
            paramLabel = "MINUTES",
            description = "Locks after so many minutes without a touch, 0 for never. Default: as set up, or 10.")
    private Double lockAfterMinutes;

    @Option(
            names = "--badge-prefix",
            paramLabel = "PREFIX",
            description = "What every badge begins with and no cabinet does. Default: as set up, or B-.")
    private String badgePrefix;

    @Option(names = "--rig", description = "Rig to use. Default: as set up, or virtual.")
    private String rigName;

    @Option(names = "--rig-setting", description = "Setting of the rig, NAME=VALUE; may be repeated.")
    private Map<String, String> rigSettings = Map.of();

    @Option(names = "--printer", description = "Print queue for tags and sheets; without one they are saved as PDF.")
    private String printer;

    @Option(
            names = "--tag-form",
            description = "Form of the repair tag: A5_LANDSCAPE or LABEL_100_X_150. Default: ${DEFAULT-VALUE}",
            defaultValue = "A5_LANDSCAPE")
    private TagForm tagForm;

    @Option(names = "--scan-prefix", description = "Characters the scanner puts before every code.", defaultValue = "")
    private String scanPrefix;

    @Option(
            names = "--scan-suffix",
            description = "Characters the scanner puts after every code, before Enter or Tab.",
            defaultValue = "")
    private String scanSuffix;

    @Option(
            names = "--tones",
            paramLabel = "OUTPUT",
            description =
                    "Output of this computer on which every answer sounds; never the rig's. The bench lets listen there. Without it: none.")
    private String tones;

    @Option(names = "--theme", description = "DARK or LIGHT. Default: as set up, or DARK.")
    private Theme theme;

    @Option(names = "--scale", description = "Size of everything, 0.5 to 4. Default: as set up, or 1.")
    private Double scale;

    @Option(names = "--language", description = "Language tag. Default: as set up, or en.")
    private String language;

    @Option(names = "--set-up", description = "Begins with the set-up walk.")
    private boolean setUp;

    @Option(names = "--practice", description = "Begins with practice: virtual rig, invented cabinets, no service.")
    private boolean practice;

    @Option(
            names = "--stop-when-open",
            description =
                    "A trial start: opens the window, prints when it had painted itself (ms since 1970), and ends.")
    private boolean stopWhenOpen;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() throws InterruptedException {
        if (GraphicsEnvironment.isHeadless()) {
            return fail("there is no display for the kiosk window");
        }
        try {
            KioskLog.into(folder);
            Exit.To next = setUp ? Exit.To.SET_UP : practice ? Exit.To.PRACTICE : Exit.To.WORK;
            while (next != Exit.To.CLOSE) {
                next = switch (next) {
                    case WORK -> work();
                    case SET_UP -> new SetUpRun(folder, theme(), screenScale(), locale()).open();
                    case PRACTICE -> practise();
                    case CLOSE -> Exit.To.CLOSE;
                };
            }
            return 0;
        } catch (SpoolException | IllegalArgumentException | IOException e) {
            return fail(e.getMessage());
        } catch (RigException e) {
            return fail(Reasons.text(e.reason(), locale()));
        }
    }

    private Exit.To practise() throws IOException, RigException, InterruptedException {
        String queue = or(printer, storedOrNone().map(KioskSettings::printer), null);
        PracticeRun run = new PracticeRun(theme(), screenScale(), locale(), queue);
        return (stopWhenOpen ? run.stoppingWhenOpen(spec.commandLine().getOut()) : run).open();
    }

    private Exit.To work() throws IOException, RigException, InterruptedException {
        Optional<KioskSettings> stored = SettingsFile.in(folder).read();
        if (stored.isEmpty() && service == null && number == null) {
            if (stopWhenOpen) {
                throw new IllegalArgumentException(folder
                        + " is not the folder of a kiosk that was set up; a trial start needs one, or --practice");
            }
            return Exit.To.SET_UP;
        }
        KioskRun run = new KioskRun(folder, settings(stored), operator, tagForm, new ScanFrame(scanPrefix, scanSuffix));
        return (stopWhenOpen ? run.stoppingWhenOpen(spec.commandLine().getOut()) : run).open();
    }

    private Optional<KioskSettings> storedOrNone() {
        try {
            return SettingsFile.in(folder).read();
        } catch (IOException e) {
            LOG.warn("{}", e.getMessage());
            return Optional.empty();
        }
    }

    private Theme theme() {
        return theme != null
                ? theme
                : storedOrNone().map(s -> Theme.valueOf(s.theme())).orElse(Theme.DARK);
    }

    private double screenScale() {
        return or(scale, storedOrNone().map(KioskSettings::scale), 1.0);
    }

    private Locale locale() {
        return Locale.forLanguageTag(or(language, storedOrNone().map(KioskSettings::language), systemLanguage()));
    }

    private static String systemLanguage() {
        return Locale.getDefault().getLanguage().equals("de") ? "de" : "en";
    }

    /** What is given here counts more than what was set up. */
    private KioskSettings settings(Optional<KioskSettings> stored) {
        String token = System.getenv("DOCKSWEEP_TOKEN");
        boolean hasToken = token != null && !token.isBlank();
        if (stored.isEmpty() && (service == null || number == null || !hasToken)) {
            throw new IllegalArgumentException("this kiosk was not set up, and without that --service, --number and the"
                    + " token in the environment variable DOCKSWEEP_TOKEN are all needed; start it without --service and"
                    + " --number to set it up");
        }
        return new KioskSettings(
                or(service, stored.map(KioskSettings::service), null),
                hasToken ? token : stored.map(KioskSettings::token).orElse(null),
                or(number, stored.map(KioskSettings::number), 0),
                or(rigName, stored.map(KioskSettings::rig), "virtual"),
                rigSettings.isEmpty() ? stored.map(KioskSettings::rigSettings).orElse(Map.of()) : rigSettings,
                or(printer, stored.map(KioskSettings::printer), null),
                or(tones, stored.map(KioskSettings::tones), null),
                theme == null ? stored.map(KioskSettings::theme).orElse(Theme.DARK.name()) : theme.name(),
                or(scale, stored.map(KioskSettings::scale), 1.0),
                or(language, stored.map(KioskSettings::language), "en"),
                or(lockAfterMinutes, stored.map(KioskSettings::lockAfterMinutes), (double)
                        SignOnParts.Settings.USUAL_LOCK_AFTER.toMinutes()),
                or(badgePrefix, stored.map(KioskSettings::badgePrefix), SignOnParts.Settings.USUAL_BADGE_PREFIX),
                stored.map(KioskSettings::pinCountsDays).orElse(KioskSettings.USUAL_PIN_COUNTS_DAYS));
    }

    private static <T> T or(T given, Optional<T> stored, T usual) {
        return given != null ? given : stored.orElse(usual);
    }

    private int fail(String words) {
        LOG.error("The kiosk could not be opened: {}", words);
        spec.commandLine().getErr().println("The kiosk could not be opened: " + words);
        return 3;
    }
}
