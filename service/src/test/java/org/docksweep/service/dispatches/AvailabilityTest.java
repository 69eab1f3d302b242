package org.docksweep.service.dispatches;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.docksweep.contract.Dispatch;
import org.docksweep.contract.FleetStatus;
import org.junit.jupiter.api.Test;

class AvailabilityTest {
    private static final LocalDate MONDAY = LocalDate.of(2026, 3, 16);

    private static Dispatch booking(int outInDays, int dueInDays, String model, int count) {
        return new Dispatch(
                UUID.randomUUID(),
                "A-" + outInDays,
                "Harbour Players",
                MONDAY.plusDays(outInDays),
                MONDAY.plusDays(dueInDays),
                List.of(new Dispatch.Line(model, count)));
    }

    private static Availability.Back back(int dueInDays, int count) {
        return new Availability.Back("TERN", MONDAY.plusDays(dueInDays), count);
    }

    @Test
    void servesEarlierBookingsFirst() {
        Availability availability = Availability.of(
                Map.of("TERN", 5), List.of(), List.of(booking(0, 9, "TERN", 4), booking(1, 9, "TERN", 4)));

        assertThat(availability.bookings())
                .extracting(FleetStatus.BookingRow::booked, FleetStatus.BookingRow::available)
                .containsExactly(org.assertj.core.groups.Tuple.tuple(4, 4), org.assertj.core.groups.Tuple.tuple(4, 1));
    }

    @Test
    void countsWhatIsDueBackOnAnEarlierDayOnly() {
        Availability dayBefore = Availability.of(Map.of(), List.of(back(0, 2)), List.of(booking(1, 9, "TERN", 2)));
        Availability sameDay = Availability.of(Map.of(), List.of(back(1, 2)), List.of(booking(1, 9, "TERN", 2)));

        assertThat(dayBefore.bookings().get(0).available()).isEqualTo(2);
        assertThat(sameDay.bookings().get(0).available()).isZero();
    }

    @Test
    void usesWhatABookingBringsBackForALaterOne() {
        Availability availability = Availability.of(
                Map.of("TERN", 3), List.of(), List.of(booking(0, 2, "TERN", 3), booking(3, 9, "TERN", 3)));

        assertThat(availability.bookings().get(1).available()).isEqualTo(3);
        assertThat(availability.needOn("TERN", 0)).isNull();
    }

    @Test
    void givesTheOldestJobTheEarliestShortage() {
        Availability availability = Availability.of(
                Map.of("TERN", 1),
                List.of(),
                List.of(booking(0, 9, "TERN", 2), booking(2, 9, "TERN", 1), booking(1, 9, "PLOVER", 1)));

        assertThat(availability.needOn("TERN", 0)).isEqualTo(MONDAY);
        assertThat(availability.needOn("TERN", 1)).isEqualTo(MONDAY.plusDays(2));
        assertThat(availability.needOn("TERN", 2)).isNull();
        assertThat(availability.needOn("PLOVER", 0)).isEqualTo(MONDAY.plusDays(1));
    }
}
