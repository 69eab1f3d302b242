package org.docksweep.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.time.Instant;
import java.util.List;
import org.docksweep.contract.FleetStatus;
import org.junit.jupiter.api.Test;

class FleetStatusSheetTest {
    @Test
    void tellsWhatCanGoOutOnItsFirstPage() throws IOException {
        try (PdfEye eye = new PdfEye(FleetStatusSheet.render(SampleSheets.fleet(6, 9), SampleTag.ENGLISH))) {
            assertThat(eye.sizeMm(0)).containsExactly(210.0, 297.0);
            assertThat(eye.text(0))
                    .contains("1,177 cabinets", "1,135 ready", "32 out", "5 at the bench", "4 on hold", "1 missing")
                    .contains("1 bookings short")
                    .contains("MCH-000005 SKIFF-P HF HF open", "waiting");
            assertThat(eye.text())
                    .contains("BREAKER-215 double 15-inch sub 9 12 2 1 0 0 24")
                    .contains("SPRAY-1 118 9 8%", "SPRAY-2 0 0 \u2013");
            PaperAssertions.isPrintableAnywhere(eye);
        }
    }

    @Test
    void putsBookingsThatCannotBeMetFirst() throws IOException {
        try (PdfEye eye = new PdfEye(FleetStatusSheet.render(SampleSheets.fleet(0, 9), SampleTag.ENGLISH))) {
            String text = eye.text(0);
            assertThat(text).contains("Mon 20 Oct 2025 B-2025-1104 Harbour Fair BREAKER-215 8 5 3");
            assertThat(text.indexOf("B-2025-1104")).isLessThan(text.indexOf("B-2025-1100"));
            assertThat(text).contains("The bench is clear.");
        }
    }

    @Test
    void putsTheBenchJobNeededFirstOnTopAndThoseNobodyNeedsLast() throws IOException {
        try (PdfEye eye = new PdfEye(FleetStatusSheet.render(SampleSheets.fleet(6, 0), SampleTag.ENGLISH))) {
            String text = eye.text();
            assertThat(text).contains("J01-00105 Wed 22 Oct 2025 5");
            assertThat(text.indexOf("J01-00105")).isLessThan(text.indexOf("J01-00102"));
            assertThat(text.indexOf("J01-00103")).isLessThan(text.indexOf("J01-00104"));
            // Nobody needs these two: the older one first.
            assertThat(text.indexOf("J01-00104")).isLessThan(text.indexOf("J01-00100"));
        }
    }

    @Test
    void namesTheCabinetsOnTheirWayToAFault() throws IOException {
        try (PdfEye eye = new PdfEye(FleetStatusSheet.render(SampleSheets.fleet(0, 0), SampleTag.ENGLISH))) {
            assertThat(eye.text())
                    .contains("On their way to a fault")
                    .contains(
                            "HF2 of MCH-000031 has lost 2.0 dB in 3 returns. Send it to the bench before the next show.");
        }
    }

    @Test
    void runsOverSeveralPagesInBothLanguages() throws IOException {
        for (PaperContext context : List.of(SampleTag.ENGLISH, SampleTag.GERMAN)) {
            try (PdfEye eye = new PdfEye(FleetStatusSheet.render(SampleSheets.fleet(200, 60), context))) {
                assertThat(eye.pages()).isGreaterThan(4);
                assertThat(eye.text(eye.pages() - 1)).containsPattern("(of|von) " + eye.pages());
                PaperAssertions.isPrintableAnywhere(eye);
            }
        }
    }

    @Test
    void saysSoWhenThereIsNothing() throws IOException {
        FleetStatus empty = new FleetStatus(
                "Marram Coast Hire",
                Instant.parse("2025-10-18T01:00:00Z"),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of());
        try (PdfEye eye = new PdfEye(FleetStatusSheet.render(empty, SampleTag.ENGLISH))) {
            assertThat(eye.pages()).isEqualTo(1);
            assertThat(eye.text())
                    .contains(
                            "0 cabinets", "No dispatch is booked.", "No cabinet is registered.", "The bench is clear.");
        }
    }
}
