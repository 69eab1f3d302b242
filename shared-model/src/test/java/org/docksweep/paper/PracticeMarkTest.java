package org.docksweep.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class PracticeMarkTest {
    private static PaperContext practising(PaperContext context) {
        return new PaperContext(
                context.siteName(),
                context.zone(),
                context.locale(),
                context.printedBy(),
                context.printedAt(),
                context.softwareVersion(),
                true);
    }

    /** The mark stands on a slant, so its letters come one by one. */
    private static String letters(String text) {
        return text.replaceAll("\\s", "");
    }

    @Test
    void standsOnEveryPageOfASheet() throws IOException {
        try (PdfEye eye = new PdfEye(ReturnSheet.render(SampleSheets.returned(200), practising(SampleTag.ENGLISH)))) {
            assertThat(eye.pages()).isGreaterThan(3);
            for (int page = 0; page < eye.pages(); page++) {
                assertThat(letters(eye.text(page))).contains("PRACTICE");
            }
        }
    }

    @ParameterizedTest
    @EnumSource(TagForm.class)
    void standsOnATagOfEveryForm(TagForm form) throws IOException {
        try (PdfEye eye = new PdfEye(RepairTag.render(new SampleTag().build(), form, practising(SampleTag.GERMAN)))) {
            assertThat(letters(eye.text())).contains("\u00dcBUNG");
            PaperAssertions.isPrintableAnywhere(eye);
        }
    }

    @Test
    void isNotOnPapersOfTheHouse() throws IOException {
        try (PdfEye eye = new PdfEye(ReturnSheet.render(SampleSheets.returned(24), SampleTag.ENGLISH))) {
            assertThat(letters(eye.text())).doesNotContain("PRACTICE");
        }
    }
}
