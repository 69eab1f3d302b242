package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import com.zaxxer.hikari.HikariDataSource;
import java.nio.file.Path;
import org.docksweep.contract.KioskToken;
import org.docksweep.contract.Person;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A pool gives up its connections after a while, also those of the first start that made the tables. */
class PoolTest {
    @TempDir
    Path folder;

    @Test
    void goesOnWhenTheConnectionsOfItsFirstStartAreGone() {
        try (RunningService.Instance service = RunningService.Instance.in(folder)) {
            Api api = service.api();
            String model = House.newModel(api);
            ((HikariDataSource) service.database()).getHikariPoolMXBean().softEvictConnections();

            AssetTag tag = House.newCabinet(api, model, CabinetStatus.OUT);
            assertThat(House.put(api, House.fail(tag, model, House.newCode())).status())
                    .isEqualTo(201);
            Staff.signedOn(Staff.kiosk(api, KioskToken.Role.DOCK), Staff.hire(api, Person.Role.BENCH));
        }
    }
}
