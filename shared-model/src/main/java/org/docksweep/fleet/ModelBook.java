package org.docksweep.fleet;

import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * The models of a fleet: everything the gate must know of cabinets and drivers before it meets one.
 *
 * @param cabinetModels cabinet models, codes unique
 * @param driverModels driver models, codes unique
 */
public record ModelBook(List<CabinetModel> cabinetModels, List<DriverModel> driverModels) {

    public ModelBook {
        cabinetModels = Require.copy("cabinet models", cabinetModels);
        driverModels = Require.copy("driver models", driverModels);
        Set<String> drivers = new HashSet<>();
        for (DriverModel driver : driverModels) {
            if (!drivers.add(driver.code())) {
                throw new IllegalArgumentException("driver model " + driver.code() + " is given twice");
            }
        }
        Set<String> cabinets = new HashSet<>();
        for (CabinetModel cabinet : cabinetModels) {
            if (!cabinets.add(cabinet.code())) {
                throw new IllegalArgumentException("cabinet model " + cabinet.code() + " is given twice");
            }
            for (DriverPosition position : cabinet.positions()) {
                if (!drivers.contains(position.driverModelCode())) {
                    throw new IllegalArgumentException("cabinet model " + cabinet.code() + ": position "
                            + position.code() + " names driver model " + position.driverModelCode()
                            + ", which is not in the book");
                }
            }
        }
    }

    /**
     * The cabinet model with a code.
     *
     * @param code cabinet model code
     * @return the model
     * @throws IllegalArgumentException if the book has no such model
     */
    public CabinetModel cabinetModel(String code) {
        return cabinetModels.stream()
                .filter(m -> m.code().equals(code))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no cabinet model " + code + " in the book"));
    }

    /**
     * The driver model with a code.
     *
     * @param code driver model code
     * @return the model
     * @throws IllegalArgumentException if the book has no such model
     */
    public DriverModel driverModel(String code) {
        return driverModels.stream()
                .filter(m -> m.code().equals(code))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no driver model " + code + " in the book"));
    }

    /**
     * The driver model that belongs in a position.
     *
     * @param cabinet cabinet model
     * @param positionCode position code
     * @return the driver model
     */
    public DriverModel driverModelAt(CabinetModel cabinet, String positionCode) {
        return driverModel(cabinet.position(positionCode).driverModelCode());
    }
}
