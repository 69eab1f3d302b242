package org.docksweep.kiosk.fleet;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import org.docksweep.contract.CabinetBody;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.Reasons;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SafetyTestsTest {
    private static final LocalDate TODAY = LocalDate.parse("2027-03-15");

    private static CabinetBody cabinet(LocalDate due, CabinetStatus status) {
        return new CabinetBody(new AssetTag("MCH-000417"), "SALT12A", "C-04", status, false, List.of(), due);
    }

    @ParameterizedTest
    @CsvSource({
        "2027-04-15, ''",
        "2027-04-14, dock-safety-test-due",
        "2027-03-15, dock-safety-test-due",
        "2027-03-14, dock-safety-test-overdue",
        "2021-01-01, dock-safety-test-overdue"
    })
    void remindsFromThirtyDaysBeforeUntilSomebodyEntersAnotherDay(LocalDate due, String key) {
        var reminder = SafetyTests.reminder(cabinet(due, CabinetStatus.OUT), TODAY);

        assertThat(reminder.map(r -> r.key()).orElse("")).isEqualTo(key);
        reminder.ifPresent(r -> {
            for (Locale locale : new Locale[] {Locale.ENGLISH, Locale.GERMAN}) {
                assertThat(Reasons.text(r, locale))
                        .contains("MCH-000417")
                        .contains(due.toString())
                        .doesNotContain("{");
            }
        });
    }

    @Test
    void remindsOfNothingWhereNobodySaidADay() {
        assertThat(SafetyTests.reminder(cabinet(null, CabinetStatus.OUT), TODAY))
                .isEmpty();
    }

    @Test
    void countsWhatIsDueAndOverdueButNothingRetired() {
        SafetyTests.Count count = SafetyTests.count(
                List.of(
                        cabinet(TODAY.minusDays(1), CabinetStatus.READY),
                        cabinet(TODAY.plusDays(30), CabinetStatus.OUT),
                        cabinet(TODAY.plusDays(31), CabinetStatus.OUT),
                        cabinet(TODAY.minusDays(400), CabinetStatus.RETIRED),
                        cabinet(null, CabinetStatus.READY)),
                TODAY);

        assertThat(count).isEqualTo(new SafetyTests.Count(2, 1));
    }
}
