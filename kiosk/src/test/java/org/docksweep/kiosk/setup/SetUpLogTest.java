package org.docksweep.kiosk.setup;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.docksweep.kiosk.LogEar;
import org.docksweep.kiosk.settings.SettingsFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SetUpLogTest {
    @TempDir
    private Path folder;

    @Test
    void saysThatTheKioskWasSetUpAndNeverWithWhatToken() throws Exception {
        SettingsFile file = SettingsFile.in(folder);
        try (LogEar ear = new LogEar();
                HouseService service = new HouseService();
                SetUpDesk desk = new SetUpDesk(
                        new SetUpParts(file, Optional.empty(), folder, "en", List::of, List::of, end -> {}))) {
            desk.next();
            desk.typed(service.authority());
            desk.typed(HouseService.OTHER_ROLE);
            desk.typed(HouseService.TOKEN);
            desk.typed("7");
            desk.next();
            desk.next();
            Files.createDirectories(file.path().resolve("in-the-way"));
            desk.next();
            desk.awaitIdle();
            Files.delete(file.path().resolve("in-the-way"));
            Files.delete(file.path());
            desk.next();
            desk.awaitIdle();

            assertThat(file.read()).isPresent();
            assertThat(ear.heard())
                    .contains("The kiosk was set up", "cannot be stored")
                    .doesNotContain(HouseService.TOKEN, HouseService.OTHER_ROLE);
        }
    }
}
