package org.docksweep.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import org.junit.jupiter.api.Test;

class ReturnSheetTest {
    @Test
    void tellsTheNightOnItsFirstPage() throws IOException {
        try (PdfEye eye = new PdfEye(ReturnSheet.render(SampleSheets.returned(24), SampleTag.ENGLISH))) {
            assertThat(eye.sizeMm(0)).containsExactly(210.0, 297.0);
            assertThat(eye.text(0))
                    .contains("Return sheet R-2025-0417", "Saltmarsh Players, due back Fri 17 Oct 2025")
                    .contains("26 due", "24 back", "2 missing", "1 unexpected", "2 failed")
                    .contains("MCH-009001 TIDE-12", "MCH-007007", "List still open.")
                    .contains("MCH-000003 TIDE-12 01:33 FAIL Bench HF open", "J01-00004")
                    .contains("MCH-000005 SKIFF-P 01:36 PASS, watch Shelf")
                    .contains("NOT SWEPT Safety hold", "SWEEP AGAIN Manual hold")
                    .contains("Printed Sat 18 Oct 2025, 02:14 by Ines Calloway", "Docksweep 0.1.0");
            PaperAssertions.isPrintableAnywhere(eye);
        }
    }

    @Test
    void numbersEveryPageOfTwoHundredAndRepeatsTheHeads() throws IOException {
        try (PdfEye eye = new PdfEye(ReturnSheet.render(SampleSheets.returned(200), SampleTag.ENGLISH))) {
            assertThat(eye.pages()).isGreaterThan(3);
            for (int page = 0; page < eye.pages(); page++) {
                assertThat(eye.text(page))
                        .contains(
                                "Page " + (page + 1) + " of " + eye.pages(), "Tag Model Time Verdict Route Reason Job");
            }
            String text = eye.text();
            for (int i = 0; i < 200; i++) {
                assertThat(text).contains(SampleSheets.tag(i).value());
            }
            PaperAssertions.isPrintableAnywhere(eye);
        }
    }

    @Test
    void fitsInGermanToo() throws IOException {
        try (PdfEye eye = new PdfEye(ReturnSheet.render(SampleSheets.returned(30), SampleTag.GERMAN))) {
            assertThat(eye.text()).contains("R\u00fccknahmeblatt", "NICHT GEMESSEN Sicherheitssperre", "Seite 1 von");
            PaperAssertions.isPrintableAnywhere(eye);
        }
    }

    @Test
    void saysSoWhenNothingCameBack() throws IOException {
        try (PdfEye eye = new PdfEye(ReturnSheet.render(SampleSheets.nothingReturned(), SampleTag.ENGLISH))) {
            assertThat(eye.pages()).isEqualTo(1);
            assertThat(eye.text())
                    .contains("Nothing is missing.", "Nothing unexpected came.", "Nothing has come back yet.");
        }
    }
}
