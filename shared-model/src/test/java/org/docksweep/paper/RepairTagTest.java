package org.docksweep.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import com.google.zxing.BarcodeFormat;
import java.io.IOException;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.pdfbox.text.TextPosition;
import org.docksweep.fleet.AssetTag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

class RepairTagTest {
    /** Resolution of the label printers of the house. */
    private static final float LABEL_PRINTER_DPI = 203;

    static Stream<Arguments> everyTag() {
        return Stream.of(TagForm.values())
                .flatMap(form -> Stream.of(SampleTag.ENGLISH, SampleTag.GERMAN)
                        .flatMap(context -> Stream.of(
                                Arguments.of("horn open", new SampleTag(), form, context),
                                Arguments.of("crowded", SampleEvidence.crowded(), form, context),
                                Arguments.of("powered", SampleEvidence.powered(), form, context),
                                Arguments.of("touching", SampleEvidence.touching(), form, context),
                                Arguments.of("bare", SampleEvidence.bare(), form, context))));
    }

    @ParameterizedTest(name = "{0} {2}")
    @MethodSource("everyTag")
    void fitsOnePageWhateverItSays(String name, SampleTag tag, TagForm form, PaperContext context) throws IOException {
        try (PdfEye eye = new PdfEye(RepairTag.render(tag.build(), form, context))) {
            assertThat(eye.pages()).isEqualTo(1);
            assertThat(eye.sizeMm(0)).containsExactly(form.widthMm(), form.heightMm());
            PaperAssertions.isPrintableAnywhere(eye);
        }
    }

    @ParameterizedTest(name = "{0} {2}")
    @MethodSource("everyTag")
    void scansOnAGreyLabelPrint(String name, SampleTag tag, TagForm form, PaperContext context) throws IOException {
        try (PdfEye eye = new PdfEye(RepairTag.render(tag.build(), form, context))) {
            assertThat(eye.codes(0, LABEL_PRINTER_DPI))
                    .isEqualTo(Map.of(BarcodeFormat.CODE_128, "J01-00042", BarcodeFormat.QR_CODE, "J01-00042"));
        }
    }

    @ParameterizedTest(name = "{0} {2}")
    @MethodSource("everyTag")
    void showsTheAssetTagInFiguresReadableFromTwoMetres(String name, SampleTag tag, TagForm form, PaperContext context)
            throws IOException {
        RepairTagContent content = tag.build();
        String value = content.checkIn().tag().value();
        try (PdfEye eye = new PdfEye(RepairTag.render(content, form, context))) {
            List<TextPosition> largest = eye.glyphs(0).stream()
                    .sorted(Comparator.comparingDouble(TextPosition::getFontSizeInPt)
                            .reversed())
                    .limit(value.length() - value.indexOf('-') - 1)
                    .toList();
            assertThat(largest.stream().map(TextPosition::getUnicode).reduce("", String::concat))
                    .isEqualTo(value.substring(value.indexOf('-') + 1));
            assertThat(largest)
                    .allSatisfy(figure -> assertThat(figure.getFontSizeInPt() * 0.7275 * 25.4 / 72)
                            .as("height of a figure in mm")
                            .isGreaterThanOrEqualTo(TagStub.FIGURES_MM - 0.01));
        }
    }

    @ParameterizedTest
    @EnumSource(TagForm.class)
    void tellsTheBenchWhatTheDockSaw(TagForm form) throws IOException {
        try (PdfEye eye = new PdfEye(RepairTag.render(new SampleTag().build(), form, SampleTag.ENGLISH))) {
            assertThat(eye.text())
                    .contains("MCH-000123", "BENCH", "needed Thu 23 Oct 2025", "TIDE-12", "FAIL")
                    .contains("The horn driver is open", "HF open")
                    .contains("Lowest impedance, \u03a9 0.61 5.90 from 5.20", "FAULT")
                    .contains("Peak, frequency, Hz 83.1 82.0 70.0 to 95.0", "watch")
                    .contains("\u221238.2 \u2013 \u2013", "not judged")
                    .contains("Impedance at IN, ohm", "first suspect", "healthy: 7 units", "decided here")
                    .contains("likely: Driver open, HF", "81%", "possible: Crossover part open, C2", "16%")
                    .contains("First: Measure the resistance at the driver itself; look at the lead-in joint first.")
                    .contains("8 Sept 2025 repaired, R. Hale: diaphragm replaced after an open coil")
                    .contains("20 Jun 2025 commissioned")
                    .contains("SPRAY-1", "SHF-20417", "D-88231", "original")
                    .contains("Polarity mark not known: mark it before removal")
                    .contains("Found (confirmed cause)", "Part fitted, serial", "signature")
                    .contains("Scanned by Ines Calloway, Sat 18 Oct 2025, 02:11", "grille")
                    .contains("Printed Sat 18 Oct 2025, 02:14 by Ines Calloway", "Docksweep 0.1.0", "gate 1, limits 1");
        }
    }

    @Test
    void saysWhatLooksTheSameWhereThereIsRoom() throws IOException {
        try (PdfEye eye =
                new PdfEye(RepairTag.render(new SampleTag().build(), TagForm.A5_LANDSCAPE, SampleTag.ENGLISH))) {
            assertThat(eye.text()).contains("Looks the same: HF open. To tell: Measure at the driver.");
        }
    }

    @ParameterizedTest
    @EnumSource(TagForm.class)
    void saysItInGermanWithGermanNumbersInTheTimeOfTheSite(TagForm form) throws IOException {
        try (PdfEye eye = new PdfEye(RepairTag.render(new SampleTag().build(), form, SampleTag.GERMAN))) {
            assertThat(eye.text())
                    .contains("WERKBANK", "gebraucht Do. 23. Okt. 2025", "FEHLER", "0,61 5,90 ab 5,20", "03:14");
        }
    }

    @ParameterizedTest
    @EnumSource(TagForm.class)
    void carriesTheCautionsThatApplyAndNoOthers(TagForm form) throws IOException {
        try (PdfEye light = new PdfEye(RepairTag.render(new SampleTag().build(), form, SampleTag.ENGLISH));
                PdfEye powered =
                        new PdfEye(RepairTag.render(SampleEvidence.powered().build(), form, SampleTag.ENGLISH))) {
            assertThat(light.text())
                    .contains("Follow local rules", "Strong magnet", "Ears: protection on in a sweep", "Rigging points")
                    .doesNotContain("Two people lift", "Mains: unplug", "Glue and solvent");
            assertThat(powered.text()).contains("Two people lift: 31 kg.", "Mains: unplug and wait before opening");
        }
    }

    @ParameterizedTest
    @EnumSource(TagForm.class)
    void neverCutsACautionShort(TagForm form) throws IOException {
        try (PdfEye english =
                        new PdfEye(RepairTag.render(SampleEvidence.crowded().build(), form, SampleTag.ENGLISH));
                PdfEye german =
                        new PdfEye(RepairTag.render(SampleEvidence.crowded().build(), form, SampleTag.GERMAN))) {
            assertThat(english.text())
                    .contains("qualified persons only.", "Two people lift: 64 kg.", "not near pacemakers or cards.")
                    .contains("face away from the horn.", "inspector judges them.", "need fresh air.");
            assertThat(german.text())
                    .contains("nur Fachkr\u00e4fte.", "Zu zweit heben: 64 kg.", "Herzschrittmachern und Karten.")
                    .contains("Gesicht weg vom Horn.", "beurteilt sie.", "frische Luft.");
        }
    }

    @ParameterizedTest
    @EnumSource(TagForm.class)
    void showsThePolarityMarkOfThatDriverModel(TagForm form) throws IOException {
        RepairTagContent content =
                new SampleTag().model(SampleModels.BREAKER_215, "LF2").build();
        try (PdfEye eye = new PdfEye(RepairTag.render(content, form, SampleTag.ENGLISH))) {
            assertThat(eye.text()).contains("Polarity: + is red dot beside the terminal", "Driver in LF2");
        }
    }

    @ParameterizedTest
    @EnumSource(TagForm.class)
    void drawsTheCurveAsVectors(TagForm form) throws IOException {
        try (PdfEye eye = new PdfEye(RepairTag.render(new SampleTag().build(), form, SampleTag.ENGLISH));
                PdfEye bare = new PdfEye(RepairTag.render(SampleEvidence.bare().build(), form, SampleTag.ENGLISH))) {
            // Curve, mean and two edges of the ribbon.
            assertThat(eye.strokesInForms(0)).isGreaterThan(4L * (SampleCurves.POINTS - 1));
            assertThat(bare.strokesInForms(0)).isZero();
            assertThat(bare.text()).contains("No curve was measured.", "NO SWEEP", "need date: see bench queue");
        }
    }

    @ParameterizedTest
    @EnumSource(TagForm.class)
    void showsWhatTouchesWhereTheMicrophoneDecidedAndTheCurveIsHealthy(TagForm form) throws IOException {
        try (PdfEye eye = new PdfEye(RepairTag.render(SampleEvidence.touching().build(), form, SampleTag.ENGLISH))) {
            assertThat(eye.text())
                    .contains("What touches, at IN, dB re the sweep's peak", "noise alone", "decided here")
                    .doesNotContain("Impedance at IN");
        }
    }

    @Test
    void showsTheLastSweepOfAPointNotTheSpoiledOnesBefore() throws IOException {
        RepairTagContent content = new SampleTag()
                .measurements(List.of(
                        SampleTag.measurement(2, SampleCurves.hornOpen(), SampleEvidence.hornReadings()),
                        SampleTag.measurement(1, SampleCurves.healthy(), List.of())))
                .build();
        try (PdfEye eye = new PdfEye(RepairTag.render(content, TagForm.A5_LANDSCAPE, SampleTag.ENGLISH))) {
            assertThat(eye.text()).contains("0.61 5.90");
        }
    }

    @ParameterizedTest
    @EnumSource(TagForm.class)
    void showsCurveAndHistoryOfTheWholeCabinetWhenNoPositionIsNamed(TagForm form) throws IOException {
        RepairTagContent content = new SampleTag().withoutPositionAtFault().build();
        try (PdfEye eye = new PdfEye(RepairTag.render(content, form, SampleTag.ENGLISH))) {
            assertThat(eye.text())
                    .contains("Last events, whole cabinet", "Impedance at IN, ohm")
                    .doesNotContain("Driver in");
        }
    }

    @Test
    void saysSoWhenThereIsNoReferenceYet() throws IOException {
        RepairTagContent content = new SampleTag().references(List.of()).build();
        try (PdfEye eye = new PdfEye(RepairTag.render(content, TagForm.A5_LANDSCAPE, SampleTag.ENGLISH))) {
            assertThat(eye.text()).contains("no reference yet").doesNotContain("healthy:");
        }
    }

    @Test
    void showsLettersOfOtherScriptsAsABoxInsteadOfLosingThem() throws IOException {
        RepairTagContent content = new SampleTag()
                .reason("p\u0159\u00edliš ti\u0161e \u58f0\u0007!")
                .build();
        try (PdfEye eye = new PdfEye(RepairTag.render(content, TagForm.A5_LANDSCAPE, SampleTag.ENGLISH))) {
            assertThat(eye.text()).contains("p\u0159\u00edliš ti\u0161e \u25a1 !");
        }
    }

    @Test
    void refusesACheckInWithoutJob() {
        RepairTagContent content = new SampleTag().withoutJob().build();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RepairTag.render(content, TagForm.A5_LANDSCAPE, SampleTag.ENGLISH))
                .withMessageContaining("MCH-000123")
                .withMessageContaining("no job code");
    }

    @Test
    void refusesTheCabinetOfAnotherCheckIn() {
        RepairTagContent content = new SampleTag().build();
        RepairTagContent mixed = new RepairTagContent(
                content.checkIn(),
                new SampleTag().tag("MCH-000124").build().cabinet(),
                content.book(),
                content.references(),
                SampleEvidence.events(new AssetTag("MCH-000124"), "HF"),
                content.needOn());
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RepairTag.render(mixed, TagForm.LABEL_100_X_150, SampleTag.ENGLISH))
                .withMessageContaining("MCH-000123")
                .withMessageContaining("MCH-000124");
    }
}
