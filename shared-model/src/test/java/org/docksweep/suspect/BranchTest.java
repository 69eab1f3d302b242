package org.docksweep.suspect;

import static org.assertj.core.api.Assertions.assertThat;

import org.docksweep.circuit.SampleCabinets;
import org.docksweep.fleet.TestPoint;
import org.junit.jupiter.api.Test;

class BranchTest {
    private final TestPoint point = SampleCabinets.twoWay().cabinetModel("TWO").testPoint("IN");

    @Test
    void findsTheDriverAPartFeeds() {
        assertThat(Branch.positionFedBy(point, "C2")).isEqualTo("HF1");
        assertThat(Branch.positionFedBy(point, "R2")).isEqualTo("HF1");
        assertThat(Branch.positionFedBy(point, "L1")).isEqualTo("LF1");
    }

    @Test
    void knowsNoDriverForAnUnknownPart() {
        assertThat(Branch.positionFedBy(point, "C99")).isNull();
    }
}
