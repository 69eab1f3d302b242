package org.docksweep.service.procedures;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import org.docksweep.fleet.DriverBenchData;
import org.docksweep.service.store.Stored;
import org.docksweep.service.store.StoredJson;

/** Numbers of a driver model as stored. */
@Entity
@Table(name = "driver_bench_data")
class BenchDataRow extends Stored<String> {
    @Id
    private String driverModelCode;

    @Column(length = 100_000)
    private String bodyJson;

    @Version
    private int version;

    protected BenchDataRow() {}

    BenchDataRow(DriverBenchData data) {
        this.driverModelCode = data.driverModelCode();
        replace(data);
    }

    /** Takes newer numbers of the same model. */
    void replace(DriverBenchData data) {
        this.bodyJson = StoredJson.write(data);
    }

    boolean says(DriverBenchData data) {
        return bodyJson.equals(StoredJson.write(data));
    }

    DriverBenchData data() {
        return StoredJson.read(bodyJson, DriverBenchData.class);
    }

    @Override
    public String getId() {
        return driverModelCode;
    }
}
