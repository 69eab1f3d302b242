package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import com.zaxxer.hikari.HikariDataSource;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
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
    void goesOnWhenTheConnectionsOfItsFirstStartAreGone() throws Exception {
        try (RunningService.Instance service = RunningService.Instance.in(folder)) {
            Api api = service.api();
            String model = House.newModel(api);
            giveUpAll((HikariDataSource) service.database());

            AssetTag tag = House.newCabinet(api, model, CabinetStatus.OUT);
            assertThat(House.put(api, House.fail(tag, model, House.newCode())).status())
                    .isEqualTo(201);
            Staff.signedOn(Staff.kiosk(api, KioskToken.Role.DOCK), Staff.hire(api, Person.Role.BENCH));
        }
    }

    /** Evicts every connection there is and waits until the last of them is closed. */
    private static void giveUpAll(HikariDataSource pool) throws SQLException, InterruptedException {
        List<Connection> held = new ArrayList<>();
        List<Connection> physical = new ArrayList<>();
        for (int count = pool.getHikariPoolMXBean().getTotalConnections(); count > 0; count--) {
            Connection connection = pool.getConnection();
            held.add(connection);
            physical.add(connection.unwrap(Connection.class));
        }
        // One made now stays, else H2 closes with its last connection and opens anew.
        held.add(0, pool.getConnection());
        for (Connection connection : held.subList(1, held.size())) {
            connection.close();
        }
        pool.getHikariPoolMXBean().softEvictConnections();
        CountDownLatch never = new CountDownLatch(1);
        for (Connection connection : physical) {
            for (int i = 0; i < 600 && !connection.isClosed(); i++) {
                never.await(50, TimeUnit.MILLISECONDS);
            }
            assertThat(connection.isClosed()).isTrue();
        }
    }
}
