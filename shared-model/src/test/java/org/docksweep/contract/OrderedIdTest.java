package org.docksweep.contract;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;

class OrderedIdTest {
    /** RFC 9562, appendix A.6: the example of a version 7 identifier. */
    @Test
    void isTheExampleOfTheStandard() {
        assertThat(OrderedId.of(0x017F22E279B0L, 0xCC3, 0x18C4DC0C0C07398FL))
                .isEqualTo(UUID.fromString("017f22e2-79b0-7cc3-98c4-dc0c0c07398f"));
    }

    @Test
    void bearsVersionVariantAndTheTimeAndIsNeverTheSame() {
        long before = System.currentTimeMillis();
        Set<UUID> made = new HashSet<>();
        for (int i = 0; i < 10_000; i++) {
            UUID id = OrderedId.next();
            assertThat(id.version()).isEqualTo(7);
            assertThat(id.variant()).isEqualTo(2);
            assertThat(id.getMostSignificantBits() >>> 16).isBetween(before, System.currentTimeMillis());
            made.add(id);
        }
        assertThat(made).hasSize(10_000);
    }

    @Test
    void growsWithTime() {
        UUID earlier = OrderedId.of(1_700_000_000_000L, -1, -1);
        UUID later = OrderedId.of(1_700_000_000_001L, 0, 0);
        assertThat(earlier).isLessThan(later);
        // As databases compare them, by their text.
        assertThat(earlier.toString()).isLessThan(later.toString());
    }
}
