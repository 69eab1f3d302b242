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
import org.docksweep.kiosk.screens.Theme;
import org.docksweep.kiosk.settings.KioskSettings;
import org.docksweep.kiosk.settings.SettingsFile;
import org.docksweep.kiosk.spool.SpoolException;
import org.docksweep.sweep.RigException;
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
            names = "--tones",
            paramLabel = "OUTPUT",
            description = "Output of this computer on which every answer sounds; never the rig's. Without it: none.")
    private String tones;

    @Option(names = "--theme", description = "DARK or LIGHT. Default: as set up, or DARK.")
    private Theme theme;

    @Option(names = "--scale", description = "Size of everything, 0.5 to 4. Default: as set up, or 1.")
    private Double scale;

    @Option(names = "--language", description = "Language tag. Default: as set up, or en.")
    private String language;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() throws InterruptedException {
        if (GraphicsEnvironment.isHeadless()) {
            return fail("there is no display for the kiosk window");
        }
        try {
            KioskSettings settings = settings(SettingsFile.in(folder).read());
            new KioskRun(folder, settings, operator).open();
            return 0;
        } catch (SpoolException | IllegalArgumentException | IOException e) {
            return fail(e.getMessage());
        } catch (RigException e) {
            return fail(Reasons.text(e.reason(), Locale.forLanguageTag(language == null ? "en" : language)));
        }
    }

    /** What is given here counts more than what was set up. */
    private KioskSettings settings(Optional<KioskSettings> stored) {
        String token = System.getenv("DOCKSWEEP_TOKEN");
        boolean hasToken = token != null && !token.isBlank();
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
        spec.commandLine().getErr().println("The kiosk could not be opened: " + words);
        return 3;
    }
}
