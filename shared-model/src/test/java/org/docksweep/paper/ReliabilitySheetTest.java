package org.docksweep.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.time.Instant;
import java.util.List;
import org.docksweep.contract.ReliabilityReport;
import org.junit.jupiter.api.Test;

class ReliabilitySheetTest {
    @Test
    void saysItInWordsFirst() throws IOException {
        try (PdfEye eye = new PdfEye(ReliabilitySheet.render(SampleReliability.report(), SampleTag.ENGLISH))) {
            assertThat(eye.sizeMm(0)).containsExactly(210.0, 297.0);
            String text = eye.text(0);
            assertThat(text)
                    .contains("A tenth fail within 38 weeks (27 to 50); from 74 failures.")
                    .contains("Aftermarket parts fail 2.1 times as often as originals (1.3 to 3.5).");
            assertThat(text.indexOf("A tenth fail within 38 weeks")).isLessThan(text.indexOf("By source"));
        }
    }

    @Test
    void drawsTheCurvesAsVectorsWithThePartsAtRisk() throws IOException {
        try (PdfEye eye = new PdfEye(ReliabilitySheet.render(SampleReliability.report(), SampleTag.ENGLISH))) {
            assertThat(eye.text(0)).contains("weeks since fitting; below: parts at risk", "Original", "Aftermarket");
            PaperAssertions.isPrintableAnywhere(eye);
        }
    }

    @Test
    void givesAnOpenLimitAsOpen() throws IOException {
        try (PdfEye eye = new PdfEye(ReliabilitySheet.render(SampleReliability.report(), SampleTag.ENGLISH))) {
            assertThat(eye.text(0)).contains("22 (14 to \u2013)");
        }
    }

    @Test
    void saysThatFewFailuresAreFew() throws IOException {
        try (PdfEye eye = new PdfEye(ReliabilitySheet.render(SampleReliability.report(), SampleTag.ENGLISH))) {
            assertThat(eye.text(1))
                    .contains("2 failures of 4 parts: not enough to say how long they last.")
                    .contains("too few");
        }
    }

    @Test
    void speaksGermanToo() throws IOException {
        try (PdfEye eye = new PdfEye(ReliabilitySheet.render(SampleReliability.report(), SampleTag.GERMAN))) {
            assertThat(eye.text(0)).contains("Nachbau", "Anteil, der noch arbeitet");
            PaperAssertions.isPrintableAnywhere(eye);
        }
    }

    @Test
    void saysSoWhenNothingIsOnRecord() throws IOException {
        ReliabilityReport empty =
                new ReliabilityReport("Marram Coast Hire", Instant.parse("2026-10-18T01:00:00Z"), 0.95, List.of());
        try (PdfEye eye = new PdfEye(ReliabilitySheet.render(empty, SampleTag.ENGLISH))) {
            assertThat(eye.pages()).isEqualTo(1);
            assertThat(eye.text()).contains("No part is on record.");
        }
    }
}
