package org.docksweep.kiosk.screens;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Dimension;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.VisualItem;
import org.docksweep.kiosk.practice.PracticeTruck;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PracticeBandTest {
    private static final Optional<PracticeTruck.Cabinet> DAMAGED = Optional.of(new PracticeTruck.Cabinet(
            new AssetTag("MCH-000117"), EnumSet.of(VisualItem.RIGGING, VisualItem.MAINS_INLET, VisualItem.GRILLE)));

    @ParameterizedTest
    @CsvSource({"en, 1, 0", "de, 1, 0", "en, 2, 0", "de, 2, 0", "en, 1, 0.35"})
    void saysPracticeAndWhatIsNextWhateverIsNext(String language, double scale, double longer) {
        ScreenSettings settings =
                new ScreenSettings(Theme.DARK, scale, Locale.forLanguageTag(language), GalleryPane.ZONE);
        for (Optional<PracticeTruck.Cabinet> next : List.of(Optional.<PracticeTruck.Cabinet>empty(), DAMAGED)) {
            List<String> faults = GalleryPane.write(
                    () -> {
                        PracticeBand band = new PracticeBand(
                                new Sizes(scale), new SampleTexts(settings.locale(), settings.zone(), longer));
                        band.show(next);
                        return band;
                    },
                    settings,
                    new Dimension(1278, PracticeBand.HEIGHT),
                    painted -> {
                        PracticeBand band = (PracticeBand) painted.pane();
                        assertThat(band.written().get(0).text())
                                .startsWith(language.equals("de") ? "\u00dcBUNG" : "PRACTICE");
                        next.ifPresent(
                                c -> assertThat(band.getAccessibleContext().getAccessibleName())
                                        .contains(c.label().value()));
                        return PageFaults.of(painted.components(), scale);
                    });
            assertThat(faults).isEmpty();
        }
    }
}
