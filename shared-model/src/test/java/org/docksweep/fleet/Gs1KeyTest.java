package org.docksweep.fleet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Asset keys against the examples of the GS1 General Specifications and of the EPC Tag Data Standard. */
class Gs1KeyTest {
    /** GS1 General Specifications: digits and their check digit. */
    @ParameterizedTest
    @CsvSource({"629104150021, 3", "0061414112345, 2", "952112300001, 8"})
    void checkDigitsAreThosePublished(String digits, int check) {
        assertThat(Gs1Key.checkDigit(digits)).isEqualTo(check);
    }

    /** EPC Tag Data Standard, examples of GRAI and GIAI. */
    @ParameterizedTest
    @ValueSource(strings = {"(8003)00614141123452400", "(8004)06141415678", "(8004)06141411ABc/D"})
    void readsThePublishedExamples(String example) {
        assertThat(Gs1Key.read(example)).contains(new Gs1Key(example));
    }

    /** ISO/IEC 15424: ]C1 is what a scanner puts before GS1-128; FNC1 comes as a group separator. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "]C1800400614141ab",
                "800400614141ab",
                "\u001D800400614141ab",
                "(8004)00614141ab\u001D",
                " 800400614141ab "
            })
    void forgivesWhatScannersPutAround(String scan) {
        assertThat(Gs1Key.looksLike(scan)).isTrue();
        assertThat(Gs1Key.read(scan)).contains(new Gs1Key("(8004)00614141ab"));
    }

    @Test
    void refusesAWrongCheckDigitAndSaysWhich() {
        assertThat(Gs1Key.looksLike("(8003)00614141123453400")).isTrue();
        assertThat(Gs1Key.read("(8003)00614141123453400")).isEmpty();
        assertThatThrownBy(() -> new Gs1Key("(8003)00614141123453400"))
                .hasMessageContaining("check digit 3")
                .hasMessageContaining("ask for 2");
    }

    /** An article number (EAN-13) may begin with 8003 as well. */
    @Test
    void leavesArticleNumbersAlone() {
        assertThat(Gs1Key.looksLike("8003456789012")).isFalse();
    }

    @Test
    void refusesAKindOfAsset() {
        assertThatThrownBy(() -> new Gs1Key("(8003)00614141123452")).hasMessageContaining("no serial");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "MCH-000123",
                "8005123",
                "(8004)",
                "(8004)0123456789012345678901234567890",
                "(8004)a$b",
                "(8004)a b"
            })
    void readsNothingElse(String text) {
        assertThat(Gs1Key.read(text)).isEmpty();
    }
}
