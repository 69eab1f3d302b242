package org.docksweep.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import org.docksweep.contract.BenchJobBody;
import org.docksweep.fleet.ProcedureCard;
import org.docksweep.fleet.ProcedureCards;
import org.docksweep.fleet.ProcedurePurpose;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class BenchPapersTest {
    private static final ProcedureCard DIAPHRAGM = ProcedureCards.of(
            ProcedurePurpose.DIAPHRAGM_REPLACEMENT, SampleModels.HORN, SampleJobs.numbers(SampleModels.HORN.code()));

    @Test
    void printsTheNumbersOfTheDriverAtTheirStep() throws IOException {
        try (PdfEye eye = new PdfEye(
                ProcedureSheet.render(DIAPHRAGM, SampleJobs.job(BenchJobBody.State.IN_REPAIR), SampleTag.ENGLISH))) {
            assertThat(eye.pages()).isEqualTo(1);
            assertThat(eye.text())
                    .contains("Replace a diaphragm", SampleModels.HORN.code(), "about 35 minutes", "J01-00042")
                    .contains("4 fasteners M4 x 12, hex socket 3 mm", "Tighten to 1.1 Nm, crosswise, in two rounds")
                    .contains("refill 60 microlitre of MF-LV", "Located by: two pins at the rim")
                    .contains("House note: Both pins")
                    .contains("common practice, no source", "Follow local rules.");
            String text = eye.text();
            assertThat(text.indexOf("Strong magnet")).isGreaterThan(text.indexOf("Take the driver off its horn"));
            assertThat(text.indexOf("Hearing protection")).isGreaterThan(text.indexOf("two clean sweeps in a row"));
            PaperAssertions.isPrintableAnywhere(eye);
        }
    }

    @ParameterizedTest
    @EnumSource(ProcedurePurpose.class)
    void printsEveryGenericCardOnOnePageWithoutNumbers(ProcedurePurpose purpose) throws IOException {
        for (PaperContext context : List.of(SampleTag.ENGLISH, SampleTag.GERMAN)) {
            try (PdfEye eye = new PdfEye(ProcedureSheet.render(ProcedureCards.generic(purpose), null, context))) {
                assertThat(eye.pages()).isEqualTo(1);
                assertThat(eye.text()).doesNotContain("Nm").doesNotContain("J01-");
                PaperAssertions.isPrintableAnywhere(eye);
            }
        }
    }

    @Test
    void showsBeforeFailureAndAfterWithTheLastOrder() throws IOException {
        try (PdfEye eye = new PdfEye(EvidenceSheet.render(SampleJobs.repaired(), SampleTag.ENGLISH))) {
            assertThat(eye.text())
                    .contains("Evidence of a repair: MCH-000123", "signed off")
                    .contains(
                            "13 Oct 2025 last measured good",
                            "18 Oct 2025 failed at the dock",
                            "R-2025-0417 last order")
                    .contains("Saltmarsh Players")
                    .contains("before, 13 Oct 2025", "at the failure, 18 Oct 2025", "after repair, 18 Oct 2025")
                    .contains("joint green with corrosion", "overdriven")
                    .contains("serial D-88231", "SP1-D8, serial D-99002")
                    .contains("scrape, rattle or dropout", "nothing heard", "proved");
            assertThat(eye.strokesInForms(0)).as("three curves of 400 points").isGreaterThan(1_000);
            PaperAssertions.isPrintableAnywhere(eye);
        }
    }

    @Test
    void refersACoilToTwentyDegrees() throws IOException {
        // 9.14 ohm at 27 C with 0.00393 per kelvin (IEC 60028) is 9.14 / 1.02751 = 8.895 ohm at 20 C, by hand.
        try (PdfEye eye = new PdfEye(EvidenceSheet.render(SampleJobs.repaired(), SampleTag.ENGLISH))) {
            assertThat(eye.text()).contains("9.14 ohm at 27 °C, 8.90 ohm at 20 °C");
        }
    }

    @Test
    void saysWhatIsNotOnRecordYet() throws IOException {
        try (PdfEye eye = new PdfEye(EvidenceSheet.render(SampleJobs.fresh(), SampleTag.GERMAN))) {
            assertThat(eye.text())
                    .contains("kein Mietauftrag bekannt", "Noch nichts aufgeschrieben", "Kein Teil wurde getauscht");
            PaperAssertions.isPrintableAnywhere(eye);
        }
    }

    @Test
    void listsWhatToOrderWithCostsAndWaitingJobs() throws IOException {
        try (PdfEye eye = new PdfEye(OrderSheet.render(SampleJobs.orders(60), SampleTag.ENGLISH))) {
            assertThat(eye.pages()).isGreaterThan(1);
            assertThat(eye.text(0))
                    .contains("60 parts to order", "20 out of stock", "2 jobs waiting")
                    .contains("TN44-D8 Diaphragm Tern 44, 8 ohm original 0 2 5 310.00 J01-00042 J01-00043");
            PaperAssertions.isPrintableAnywhere(eye);
        }
        try (PdfEye eye = new PdfEye(OrderSheet.render(SampleJobs.orders(0), SampleTag.ENGLISH))) {
            assertThat(eye.text()).contains("Nothing is to be ordered.");
        }
    }
}
